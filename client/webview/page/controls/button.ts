import '@vscode-elements/elements/dist/vscode-button/index.js';
import type { TemplateResult } from 'lit';
import { html } from 'lit';
import { ifDefined } from 'lit/directives/if-defined.js';

/** A button as a page asks for it. */
export interface ButtonParts {
  label: string;
  press: () => void;
  id?: string;
  /** What a screen reader calls it and the pointer is told, where the label is a mere sign. */
  name?: string;
  /** Whether it is one beside the main button. */
  isSecondary?: boolean;
  isDisabled?: boolean;
}

/** A button of the editor. */
export function button(parts: ButtonParts): TemplateResult {
  const { label, press, id, name, isSecondary = false, isDisabled = false } = parts;
  return html`<vscode-button
    id=${ifDefined(id)}
    aria-label=${ifDefined(name)}
    title=${ifDefined(name)}
    ?secondary=${isSecondary}
    ?disabled=${isDisabled}
    aria-disabled=${isDisabled}
    @keydown=${holdPage}
    @click=${press}
    >${label}</vscode-button
  >`;
}

/** The space key presses the button and does not scroll the page as well. */
function holdPage(event: KeyboardEvent): void {
  if (event.key === ' ') event.preventDefault();
}
