/** The list of a choice cell, right below it (or above, where there is more room): a listbox that the cell's field controls. */

export interface ListedChoices {
  readonly labels: readonly string[];
  readonly at: number;
}

export class ChoiceList {
  readonly list = document.createElement('ul');
  #shown = '';

  /** `pick` is told which choice was pressed. */
  constructor(pick: (at: number) => void) {
    const { list } = this;
    list.className = 'choices';
    list.id = 'cell-choices';
    list.setAttribute('role', 'listbox');
    list.setAttribute('aria-label', 'choices');
    // The field keeps the focus while a choice is pressed.
    list.addEventListener('pointerdown', (event) => {
      event.stopPropagation();
      if (event.pointerType !== 'touch') event.preventDefault();
    });
    list.addEventListener('mousedown', (event) => event.preventDefault());
    list.addEventListener('click', (event) => {
      event.stopPropagation();
      const { target } = event;
      const option = target instanceof Element ? target.closest('li') : null;
      if (option) pick([...list.children].indexOf(option));
    });
  }

  /** Shows the choices in a cell; undefined takes the list away. */
  show(td: HTMLElement | undefined, choices: ListedChoices | undefined, scroller: HTMLElement): void {
    const { list } = this;
    if (!td || !choices) {
      if (list.isConnected) list.remove();
      this.#shown = '';
      return;
    }
    const key = `${choices.labels.join('\n')}`;
    if (key !== this.#shown) {
      this.#shown = key;
      list.replaceChildren(
        ...choices.labels.map((label, k) => {
          const option = document.createElement('li');
          option.id = `cell-choice-${k}`;
          option.setAttribute('role', 'option');
          option.textContent = label;
          return option;
        }),
      );
    }
    [...list.children].forEach((option, k) =>
      option.setAttribute('aria-selected', k === choices.at ? 'true' : 'false'),
    );
    if (list.parentElement !== td) td.append(list);
    const cell = td.getBoundingClientRect();
    const page = scroller.getBoundingClientRect();
    const [above, below] = [cell.top - page.top - 28, page.bottom - cell.bottom];
    const up = below < Math.min(240, list.scrollHeight) && above > below;
    list.classList.toggle('up', up);
    list.style.setProperty('--room', `${Math.max(90, Math.min(320, (up ? above : below) - 8))}px`);
    list.children[choices.at]?.scrollIntoView({ block: 'nearest' });
  }
}
