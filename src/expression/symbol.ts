/** Names as symbols: Greek letters by their English names, an index behind an underscore (F24). */

const GREEK: ReadonlyMap<string, string> = new Map(
  Object.entries({
    alpha: 'α',
    beta: 'β',
    gamma: 'γ',
    delta: 'δ',
    epsilon: 'ε',
    zeta: 'ζ',
    eta: 'η',
    theta: 'θ',
    iota: 'ι',
    kappa: 'κ',
    lambda: 'λ',
    mu: 'μ',
    nu: 'ν',
    xi: 'ξ',
    omicron: 'ο',
    pi: 'π',
    rho: 'ρ',
    sigma: 'σ',
    tau: 'τ',
    upsilon: 'υ',
    phi: 'φ',
    chi: 'χ',
    psi: 'ψ',
    omega: 'ω',
    Gamma: 'Γ',
    Delta: 'Δ',
    Theta: 'Θ',
    Lambda: 'Λ',
    Xi: 'Ξ',
    Pi: 'Π',
    Sigma: 'Σ',
    Phi: 'Φ',
    Psi: 'Ψ',
    Omega: 'Ω',
  }),
);

export interface SymbolParts {
  /** A letter, Greek where the name said so, or a word. */
  readonly base: string;
  /** Index parts in order: "c" and "1.1". */
  readonly index?: string;
}

/** Letter and index written together, as the trade does: ae, fz, Dc, kc1.1, x1. */
const TOGETHER = /^(\p{L})(\p{Ll}?\d+(?:\.\d+)?|\p{Ll})$/u;
const GREEK_WITH_NUMBER = /^([A-Za-z]+?)(\d+(?:\.\d+)?)$/;

const letter = (word: string): string => GREEK.get(word) ?? word;

/** "kappa_r" is κ with index r, "fz" f with index z, "kc1.1" k with index c1.1; other words stay words. */
export function readSymbol(name: string): SymbolParts {
  const [word = name, ...indices] = name.split('_');
  if (word !== '' && indices.length > 0) return { base: letter(word), index: indices.map(letter).join(' ') };
  if (GREEK.has(name)) return { base: letter(name) };
  const together = TOGETHER.exec(name);
  if (together) return { base: together[1] ?? name, index: together[2] ?? '' };
  const numbered = GREEK_WITH_NUMBER.exec(name);
  if (numbered?.[1] && GREEK.has(numbered[1])) return { base: letter(numbered[1]), index: numbered[2] ?? '' };
  return { base: name };
}

export const escapeMarkup = (text: string): string =>
  text.replaceAll('&', '&amp;').replaceAll('<', '&lt;').replaceAll('>', '&gt;').replaceAll('"', '&quot;');

const isLetter = (text: string): boolean => [...text].length === 1;

/** A symbol as MathML: a single letter slanted, a word and an index upright. */
export function typesetSymbol(name: string): string {
  const { base, index } = readSymbol(name);
  const identifier = isLetter(base)
    ? `<mi>${escapeMarkup(base)}</mi>`
    : `<mi mathvariant="normal">${escapeMarkup(base)}</mi>`;
  if (index === undefined || index === '') return identifier;
  const isNumber = /^[\d.]+$/.test(index);
  const below = isNumber ? `<mn>${index}</mn>` : `<mi mathvariant="normal">${escapeMarkup(index)}</mi>`;
  return `<msub>${identifier}${below}</msub>`;
}
