import { createHash } from 'node:crypto';
import { readFileSync } from 'node:fs';
import { deflateRawSync, inflateRawSync } from 'node:zlib';
import fc from 'fast-check';
import jsQR from 'jsqr';
import { expect, test } from 'vitest';
import { emptyNotebook, enter, isRefusal } from '../../src/document/index.ts';
import type { Notebook } from '../../src/document/index.ts';
import {
  compareNotebooks,
  LINK_LIMITS,
  readAnyNotebook,
  readLink,
  readNotebook,
  readReport,
  writeLink,
  writeReport,
} from '../../src/exchange/index.ts';
import type { ReportContent } from '../../src/exchange/index.ts';
import { inertMarkup } from '../../src/exchange/inert-markup.ts';
import { fromBase64url, toBase64url } from '../../src/exchange/base64url.ts';
import { REPORT_STYLES, REPORT_STYLES_HASH } from '../../src/exchange/report-styles.ts';
import { qrDrawing, QR_CAPACITY } from '../../src/ui/qr-code.ts';
import { done, typed } from '../document/sample.ts';
import { withAllParts } from '../document/sample-parts.ts';

const hostile = `</template><script>alert(1)</script><img src=x onerror="alert(2)"> & "quoted" 'single' \u0007`;

const sample = (title = 'Slot & bore'): Notebook =>
  typed(emptyNotebook({ id: 'n1', title, worksheetTitle: '<b>Feeds</b>' }), {
    A1: 'cutting speed',
    B1: '150 m/min',
    A2: hostile.slice(0, 60),
    B2: '=B1*2',
  });

const content = (notebook: Notebook, more: Partial<ReportContent> = {}): ReportContent => ({
  notebook,
  results: new Map([
    [
      'w1',
      new Map([
        [
          'B2',
          {
            value: 5,
            kind: 'cutting speed',
            unit: 'm/min',
            cautions: [{ key: 'k', text: hostile, type: 'caution' as const }],
          },
        ],
      ]),
    ],
  ]),
  usualCautions: ['Rotating tools and chips injure.'],
  program: 'Swarfbook 0.1.0',
  made: '2026-03-09 10:42',
  ...more,
});

test('a report opens again as the notebook it was made of, with its results', () => {
  const notebook = sample();
  const read = readReport(writeReport(content(notebook)));
  expect(isRefusal(read) ? read.message : compareNotebooks(notebook, read.notebook)).toEqual([]);
  expect(!isRefusal(read) && read.results.get('w1')?.get('B2')?.value).toBe(5);
});

test('a report carries no script, and nothing of the user becomes markup', () => {
  const page = writeReport(
    content(sample(hostile.slice(0, 60)), {
      workings: [
        {
          title: hostile,
          markup: ['<math><mi onclick="x()">a</mi><script>1</script></math>', hostile],
          sources: [hostile],
        },
      ],
      figures: [
        {
          title: hostile,
          svg: '<svg viewBox="0 0 1 1"><style>x{}</style><image href="http://e.example/x.png"/><path d="M0 0" onload="x()" fill="url(http://e.example)"/><a href="javascript:x()"><text>t</text></a></svg>',
          table: { headers: [hostile], rows: [[hostile]] },
        },
      ],
    }),
  );
  const shown = page.slice(0, page.indexOf('<template'));
  expect(page).not.toMatch(/<script|<iframe|<object|<link|<img(?! src="data:)/i);
  expect(page.replaceAll(/"[^"]*"/g, '""')).not.toMatch(/<[^>]*\son\w+\s*=/i);
  expect(shown).not.toMatch(/javascript:|e\.example/);
  expect(page.match(/<template/g)).toHaveLength(1);
  expect(page).toContain("default-src 'none'");
  expect(page).not.toContain("'unsafe");
});

test('the policy of a report allows exactly its own style text', () => {
  expect(REPORT_STYLES_HASH).toBe(`sha256-${createHash('sha256').update(REPORT_STYLES).digest('base64')}`);
  const page = writeReport(content(sample()));
  const [, styles = ''] = /<style>([^<]*)<\/style>/.exec(page) ?? [];
  expect(`sha256-${createHash('sha256').update(styles).digest('base64')}`).toBe(REPORT_STYLES_HASH);
});

test('every text of a cell comes back from a report as it was', () => {
  fc.assert(
    fc.property(fc.string({ unit: 'grapheme', maxLength: 80 }), (text) => {
      const base = emptyNotebook({ id: 'n' });
      const answer = enter(base, { worksheet: 'w1', row: 0, column: 0, typed: text });
      if (isRefusal(answer)) return;
      const notebook = done(base, answer);
      const read = readReport(writeReport(content(notebook, { results: new Map() })));
      expect(isRefusal(read) ? read.message : compareNotebooks(notebook, read.notebook)).toEqual([]);
    }),
    { seed: 20260309, numRuns: 300 },
  );
});

test('what the trials tell stands in the report, escaped', () => {
  const notebook = withAllParts();
  const page = writeReport(
    content(notebook, { results: new Map(), findings: new Map([['t1', ['B lasts <longer>.']]]) }),
  );
  expect(page).toContain('<li>B lasts &lt;longer&gt;.</li>');
  expect(page.slice(0, page.indexOf('<template'))).toContain('VB was 0.21 mm (ab, 2026-03-09 08:05 UTC)');
  const read = readReport(page);
  expect(isRefusal(read) ? read.message : compareNotebooks(notebook, read.notebook)).toEqual([]);
});

test('a page that is no report, a cut one and one with two notebooks are refused in words', () => {
  const page = writeReport(content(sample()));
  const words = (text: string): string => {
    const read = readReport(text);
    return isRefusal(read) ? read.message : 'opened';
  };
  expect(words('<!doctype html><p>hello')).toMatch(/no report/);
  expect(words(page.slice(0, page.indexOf('</template')))).toMatch(/ends too early/);
  expect(words(page.replace('</body>', '<template id="notebook-data">{}</template></body>'))).toMatch(
    /more than one/,
  );
  expect(words('<html><template id="notebook-data"><b>x</b></template>')).toMatch(/no plain text/);
  expect(words('<html><template id="notebook-data">{"format":1}</template>')).toMatch(/not opened/);
  expect(isRefusal(readAnyNotebook(page))).toBe(false);
});

test('a page saved again by a browser, with other quotes and one-line tags, is still read', () => {
  const page = writeReport(content(sample())).replace(
    '<template id="notebook-data">',
    "<template  class='' id='notebook-data'>",
  );
  expect(isRefusal(readReport(page.replaceAll('&quot;', '"')))).toBe(false);
});

test('drawings are kept as they are where they only draw, and broken markup is refused', () => {
  const plain =
    '<svg viewBox="0 0 10 10"><g transform="translate(1,2)"><path d="M0 0L1 1" stroke="currentColor"></path><text x="1">a &amp; b</text></g></svg>';
  expect(inertMarkup(plain)?.text).toBe(plain);
  for (const broken of [
    '<svg><g></svg>',
    '<svg>',
    '<div></div>',
    '<svg a="<">x</svg>',
    'text',
    '<svg></svg><svg></svg>',
    '<svg><!-- c --></svg>',
  ])
    expect([broken, inertMarkup(broken)]).toEqual([broken, undefined]);
  expect(
    inertMarkup('<svg><script>alert(1)</script><text fill="&#117;rl(http://x)">t</text></svg>')?.text,
  ).toBe('<svg><text>t</text></svg>');
});

const pack = (text: string): Promise<Uint8Array> =>
  Promise.resolve(new Uint8Array(deflateRawSync(Buffer.from(text))));
const unpack = (bytes: Uint8Array, most: number): Promise<string> =>
  Promise.resolve(inflateRawSync(bytes, { maxOutputLength: most }).toString());

test('a link carries a small notebook in its fragment and gives it back', async () => {
  const notebook = sample();
  const link = await writeLink('https://shop.example/book/#old', notebook, pack);
  if (typeof link !== 'string') throw new Error(link.message);
  expect(link).toMatch(/^https:\/\/shop\.example\/book\/#n1\.[\w-]+$/);
  const read = await readLink(link.slice(link.indexOf('#')), unpack);
  expect(isRefusal(read) ? read.message : compareNotebooks(notebook, read.notebook)).toEqual([]);
});

test('a hostile, cut or newer fragment is refused in words', async () => {
  const words = async (fragment: string): Promise<string> => {
    const read = await readLink(fragment, unpack);
    return isRefusal(read) ? read.message : 'opened';
  };
  const bomb = toBase64url(await pack(' '.repeat(LINK_LIMITS.unpacked + 1)));
  expect(await words(`#n1.${bomb}`)).toMatch(/damaged/);
  expect(await words('#n1.')).toMatch(/damaged/);
  expect(await words('#n1.*')).toMatch(/damaged/);
  expect(await words('#n2.abcd')).toMatch(/newer version/);
  expect(await words('#elsewhere')).toMatch(/no notebook/);
  expect(await words(`#n1.${'A'.repeat(LINK_LIMITS.link)}`)).toMatch(/longer/);
  expect(await words(`#n1.${toBase64url(await pack('{"format":1,"__proto__":{}}'))}`)).toMatch(/not opened/);
  await fc.assert(
    fc.asyncProperty(fc.uint8Array({ maxLength: 60 }), async (bytes) => {
      expect(await words(`#n1.${toBase64url(bytes)}`)).not.toBe('opened');
    }),
    { seed: 20260309, numRuns: 200 },
  );
});

test('base64url agrees with an independent encoder and refuses what is none', () => {
  fc.assert(
    fc.property(fc.uint8Array({ maxLength: 100 }), (bytes) => {
      const text = toBase64url(bytes);
      expect(text).toBe(Buffer.from(bytes).toString('base64url'));
      expect(fromBase64url(text)).toEqual(bytes);
    }),
    { seed: 20260309 },
  );
  for (const wrong of ['A', 'AB=', 'A+', 'AB', '\u00e4\u00e4']) {
    if (wrong !== 'AB') expect(fromBase64url(wrong)).toBeUndefined();
  }
  expect(fromBase64url('AB')).toBeUndefined();
});

/** The drawing as pixels, each module `scale` pixels wide. */
function pixels(
  drawing: { size: number; path: string },
  scale: number,
): { data: Uint8ClampedArray; side: number } {
  const side = drawing.size * scale;
  const data = new Uint8ClampedArray(side * side * 4).fill(255);
  for (const [, x, y] of drawing.path.matchAll(/M(\d+) (\d+)h1v1h-1z/g)) {
    for (let row = Number(y) * scale; row < (Number(y) + 1) * scale; row += 1)
      for (let column = Number(x) * scale; column < (Number(x) + 1) * scale; column += 1)
        data.fill(0, (row * side + column) * 4, (row * side + column) * 4 + 3);
  }
  return { data, side };
}

test('an independent decoder reads the link out of its QR code', async () => {
  for (const notebook of [sample(), emptyNotebook({ id: 'small' })]) {
    const link = await writeLink('https://shop.example/', notebook, pack);
    if (typeof link !== 'string') throw new Error(link.message);
    const drawing = qrDrawing(link);
    if (!drawing) throw new Error('does not fit');
    const { data, side } = pixels(drawing, 4);
    expect(jsQR(data, side, side)?.data).toBe(link);
  }
  expect(qrDrawing('x'.repeat(QR_CAPACITY))).toBeDefined();
  expect(qrDrawing('x'.repeat(QR_CAPACITY + 1))).toBeUndefined();
});

test('a worked notebook of the program fits into a report, and a large one is refused as a link', async () => {
  const read = readNotebook(readFileSync('sheets/crank-line-gang.json', 'utf8'));
  if (isRefusal(read)) throw new Error(read.message);
  const again = readReport(writeReport(content(read.notebook, { results: read.results })));
  expect(isRefusal(again) ? again.message : compareNotebooks(read.notebook, again.notebook)).toEqual([]);
  const link = await writeLink('https://shop.example/', read.notebook, (text) =>
    Promise.resolve(Buffer.from(text)),
  );
  expect(typeof link === 'string' ? link.length : link.message).toMatch(/send the file/);
});
