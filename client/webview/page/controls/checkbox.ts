import '@vscode-elements/elements/dist/vscode-checkbox/index.js';
import type { VscodeCheckbox } from '@vscode-elements/elements/dist/vscode-checkbox/index.js';
import type { TemplateResult } from 'lit';
import { html } from 'lit';
import { ifDefined } from 'lit/directives/if-defined.js';
import { ref } from 'lit/directives/ref.js';

/** A check box as a page asks for it. */
export interface CheckboxParts {
  /** What stands beside the box. */
  label: TemplateResult | string;
  isChecked: boolean;
  change: (isChecked: boolean) => void;
  id?: string;
}

/** A check box of the editor. */
export function checkbox({ label, isChecked, change, id }: CheckboxParts): TemplateResult {
  return html`<vscode-checkbox
    id=${ifDefined(id)}
    ${ref((element) => show(element as VscodeCheckbox | undefined, isChecked))}
    @click=${pressInner}
    @change=${(event: Event) => change((event.currentTarget as VscodeCheckbox).checked)}
    >${label}</vscode-checkbox
  >`;
}

function show(box: VscodeCheckbox | undefined, isChecked: boolean): void {
  if (!box) return;
  box.checked = isChecked;
  void box.updateComplete.then(() => tellInner(box));
}

/**
 * A screen reader presses the input inside of the control, of which the control itself learns nothing; it becomes a press
 * of the label, of which it does.
 */
function pressInner(event: Event): void {
  const [pressed] = event.composedPath();
  if (!(pressed instanceof HTMLInputElement)) return;
  event.preventDefault();
  pressed.labels?.[0]?.click();
  const box = event.currentTarget as VscodeCheckbox;
  // The browser takes the press back once it has told everybody of it.
  setTimeout(() => tellInner(box));
}

/** What a screen reader is told is the state of the inner input, which no longer follows the control once it was pressed. */
function tellInner(box: VscodeCheckbox): void {
  const inner = box.shadowRoot?.querySelector('input');
  if (inner) inner.checked = box.checked;
}
