/** HTML as text that can not carry anything but what was meant: every value put in is escaped. */

/** Markup that is known to be sound. */
export class Markup {
  constructor(readonly text: string) {}
}

type Put = Markup | string | number | undefined | readonly Put[];

export function escaped(text: string): string {
  return text
    .replaceAll('&', '&amp;')
    .replaceAll('<', '&lt;')
    .replaceAll('>', '&gt;')
    .replaceAll('"', '&quot;');
}

function put(value: Put): string {
  if (value === undefined) return '';
  if (value instanceof Markup) return value.text;
  if (typeof value === 'object') return value.map(put).join('');
  // What is no character of a document (XML 1.0, 2.2) is shown as such.
  return escaped(String(value).replaceAll(/[^\P{Cc}\t\n]/gu, '\ufffd'));
}

/** A template whose values are escaped, unless they are Markup themselves; lists are put one behind the other. */
export function markup(parts: TemplateStringsArray, ...values: readonly Put[]): Markup {
  return new Markup(parts.map((part, index) => part + put(values[index])).join(''));
}

const NAMED: ReadonlyMap<string, string> = new Map([
  ['amp', '&'],
  ['lt', '<'],
  ['gt', '>'],
  ['quot', '"'],
  ['apos', "'"],
  ['nbsp', '\u00a0'],
]);

/** The text behind character references; one that is not known stays as it is written. */
export function unescaped(text: string): string {
  return text.replaceAll(
    /&(?:#(\d{1,7})|#[xX]([\da-fA-F]{1,6})|([a-zA-Z]{2,8}));/g,
    (written, decimal, hex, name) => {
      if (typeof name === 'string') return NAMED.get(name) ?? written;
      const code = typeof decimal === 'string' ? Number(decimal) : Number.parseInt(String(hex), 16);
      return code > 0 && code <= 0x10ffff ? String.fromCodePoint(code) : '\ufffd';
    },
  );
}
