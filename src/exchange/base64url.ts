/** Bytes as text that may stand in a link (RFC 4648, section 5), without padding. */

const DIGITS = 'ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789-_';
const VALUES: ReadonlyMap<string, number> = new Map([...DIGITS].map((digit, value) => [digit, value]));

export function toBase64url(bytes: Uint8Array): string {
  let text = '';
  for (let at = 0; at < bytes.length; at += 3) {
    const [a = 0, b = 0, c = 0] = bytes.subarray(at, at + 3);
    const bits = (a << 16) | (b << 8) | c;
    const digits = Math.min(4, bytes.length - at + 1);
    for (let digit = 0; digit < digits; digit += 1) text += DIGITS[(bits >> (18 - 6 * digit)) & 63];
  }
  return text;
}

/** Undefined where the text is none: another character, a length that can not be, bits left over. */
export function fromBase64url(text: string): Uint8Array | undefined {
  if (text.length % 4 === 1) return undefined;
  const bytes = new Uint8Array(Math.floor((text.length * 3) / 4));
  let bits = 0;
  let held = 0;
  let at = 0;
  for (const char of text) {
    const value = VALUES.get(char);
    if (value === undefined) return undefined;
    bits = ((bits << 6) | value) & 0xffff;
    held += 6;
    if (held < 8) continue;
    held -= 8;
    bytes[at] = (bits >> held) & 0xff;
    at += 1;
  }
  return (bits & ((1 << held) - 1)) === 0 ? bytes : undefined;
}
