import '@vscode-elements/elements/dist/vscode-single-select/index.js';
import type { VscodeSingleSelect } from '@vscode-elements/elements/dist/vscode-single-select/index.js';
import type { TemplateResult } from 'lit';
import { html } from 'lit';
import { ifDefined } from 'lit/directives/if-defined.js';
import { ref } from 'lit/directives/ref.js';

/** One of the things to choose from. */
export interface Option {
  value: string;
  label: string;
}

/** A list of which one is chosen, as a page asks for it. */
export interface ChoiceParts {
  /** What a screen reader calls the list. */
  label: string;
  options: readonly Option[];
  value: string;
  choose: (value: string) => void;
  id?: string;
  /** The `id` of an element that says more about it. */
  describedBy?: string;
  /** Whether typing narrows the list down; for long lists. */
  isSearched?: boolean;
}

/** A list of the editor of which one is chosen. */
export function choiceList(parts: ChoiceParts): TemplateResult {
  const { label, options, value, choose, id, describedBy, isSearched = false } = parts;
  return html`<vscode-single-select
    id=${ifDefined(id)}
    label=${label}
    aria-describedby=${ifDefined(describedBy)}
    filter="contains"
    ?combobox=${isSearched}
    ${ref((element) => show(element as VscodeSingleSelect | undefined, options, value))}
    @change=${({ currentTarget }: Event) => {
      const list = currentTarget as VscodeSingleSelect;
      // A click on an option takes the focus to where nothing is once the options are closed.
      list.shadowRoot?.querySelector<HTMLElement>('[role=combobox]')?.focus();
      choose(list.value);
    }}
  ></vscode-single-select>`;
}

/** The control draws itself anew only when its value is set, and forgets what is searched when its options are. */
function show(list: VscodeSingleSelect | undefined, options: readonly Option[], value: string): void {
  if (!list) return;
  const isSame =
    list.options.length === options.length &&
    list.options.every((one, at) => one.value === options[at]?.value && one.label === options[at]?.label);
  if (!isSame) list.options = [...options] as typeof list.options;
  if (!isSame || list.value !== value) list.value = value;
}
