/** A note's tree as templates: nothing of the text becomes markup. */

import { html, type TemplateResult } from 'lit';
import type { NoteBlock, NoteInline } from '../note-tree.ts';

/** `go` is told the place of a link inside the notebook. */
export function noteView(blocks: readonly NoteBlock[], go: (place: string) => void): TemplateResult {
  return html`${blocks.map((block) => {
    if (block.type === 'paragraph') return html`<p>${inlineView(block.parts, go)}</p>`;
    const items = block.items.map((item) => html`<li>${inlineView(item, go)}</li>`);
    return block.ordered
      ? html`<ol start=${block.start}>
          ${items}
        </ol>`
      : html`<ul>
          ${items}
        </ul>`;
  })}`;
}

export function inlineView(parts: readonly NoteInline[], go: (place: string) => void): unknown {
  return parts.map((part) => {
    switch (part.type) {
      case 'text':
        return part.text;
      case 'code':
        return html`<code>${part.text}</code>`;
      case 'emphasis':
        return html`<em>${inlineView(part.parts, go)}</em>`;
      case 'strong':
        return html`<strong>${inlineView(part.parts, go)}</strong>`;
      case 'link': {
        const { to } = part;
        return to.type === 'https'
          ? html`<a href=${to.address} target="_blank" rel="noopener noreferrer"
              >${inlineView(part.parts, go)}</a
            >`
          : html`<button class="link" @click=${() => go(to.place)}>${inlineView(part.parts, go)}</button>`;
      }
    }
  });
}

/** For paper: a link out of the program says where it leads. */
export function printed(parts: readonly NoteInline[]): unknown {
  return parts.map((part) => {
    switch (part.type) {
      case 'text':
        return part.text;
      case 'code':
        return html`<code>${part.text}</code>`;
      case 'emphasis':
        return html`<em>${printed(part.parts)}</em>`;
      case 'strong':
        return html`<strong>${printed(part.parts)}</strong>`;
      case 'link':
        return html`<u>${printed(part.parts)}</u>${part.to.type === 'https' ? ` (${part.to.address})` : ''}`;
    }
  });
}

export function printedNote(blocks: readonly NoteBlock[]): TemplateResult {
  return html`${blocks.map((block) => {
    if (block.type === 'paragraph') return html`<p>${printed(block.parts)}</p>`;
    const items = block.items.map((item) => html`<li>${printed(item)}</li>`);
    return block.ordered
      ? html`<ol start=${block.start}>
          ${items}
        </ol>`
      : html`<ul>
          ${items}
        </ul>`;
  })}`;
}
