/** Where the list over the entry line stands: it covers neither the row that is being typed in nor the line itself. */

/** Pixels between the list and what it must not cover. */
const GAP = 4;
/** Below the row it stands where so many options have room, or more than above. */
const FEW = 3;

export class ListPlace {
  #list: HTMLElement | undefined;
  #page: ParentNode | undefined;
  #sizes: ResizeObserver | undefined;

  /** `line` is the element whose shadow holds the list; the page stands beside it. */
  constructor(private readonly line: HTMLElement) {}

  /** To be called when the list has been drawn; undefined where there is none. */
  show(list: HTMLElement | undefined): void {
    this.#list = list;
    if (!list) return this.#leave();
    if (!this.#sizes) this.#watch();
    this.#put();
  }

  /** The page gives way to the line and is scrolled: the row goes elsewhere. */
  #watch(): void {
    const root = this.line.getRootNode();
    const page = root instanceof ShadowRoot ? root.querySelector('page-grid')?.shadowRoot : undefined;
    const scroller = page?.querySelector('.scroller');
    if (!page || !scroller) return;
    this.#page = page;
    this.#sizes = new ResizeObserver(this.#put);
    this.#sizes.observe(this.line);
    this.#sizes.observe(scroller);
    page.addEventListener('scroll', this.#put, true);
  }

  #leave(): void {
    this.#sizes?.disconnect();
    this.#sizes = undefined;
    this.#page?.removeEventListener('scroll', this.#put, true);
  }

  readonly #put = (): void => {
    const list = this.#list;
    const row = this.#page?.querySelector('.editor')?.closest('tr')?.getBoundingClientRect();
    if (!list || !row) return;
    const marked = list.querySelector<HTMLElement>('[aria-selected="true"]');
    const { top } = this.line.getBoundingClientRect();
    const below = top - row.bottom - 2 * GAP;
    const above = Math.min(top, row.top) - 2 * GAP;
    const isBelow = below >= Math.min(list.scrollHeight, FEW * (marked?.offsetHeight ?? 0)) || below >= above;
    list.style.setProperty('--room', `${Math.max(0, isBelow ? below : above)}px`);
    list.style.setProperty('--up', `${isBelow ? GAP : GAP + top - Math.min(top, row.top)}px`);
    if (!marked) return;
    const under = marked.offsetTop + marked.offsetHeight - list.clientHeight;
    list.scrollTop = Math.min(marked.offsetTop, Math.max(list.scrollTop, under));
  };
}
