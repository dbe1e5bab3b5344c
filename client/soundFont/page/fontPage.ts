import type { TemplateResult } from 'lit';
import { html, nothing } from 'lit';
import { noteNameOf } from '../../../server/model/keys';
import { counted } from '../../../server/model/wording/counted';
import type { FontFacts, FontPreset } from '../../../server/protocol/requests/fontRequests';
import type { PresetNumbers } from '../../../server/soundfont/font';
import type { ChartState } from '../../keyboardMap/page/chartState';
import { untouchedChart } from '../../keyboardMap/page/chartState';
import { KeyboardChart } from '../../keyboardMap/page/keyboardChart';
import { button } from '../../webview/page/controls/button';
import { l10n } from '../../webview/page/l10n';
import { PageElement } from '../../webview/page/pageElement';
import type { FontFromPage, FontToPage } from '../messages';

/** What is remembered: what the list of presets is narrowed down to, which one is shown, and how its map is. */
interface Kept {
  filter: string;
  preset?: PresetNumbers;
  chart: ChartState;
}

const textNames: Readonly<Record<FontFacts['texts'][number]['kind'], () => string>> = {
  copyright: () => l10n.t('Copyright'),
  comment: () => l10n.t('Comment'),
  author: () => l10n.t('Made by'),
  product: () => l10n.t('Made for'),
  date: () => l10n.t('Date'),
  tools: () => l10n.t('Made with'),
};

/** Shows what is in a SoundFont: its facts, its presets, and the keyboard map and sound of the one that is chosen. */
export class FontPage extends PageElement<FontToPage, FontFromPage, Kept> {
  #shown: Extract<FontToPage, { type: 'font' | 'problem' }> | undefined;
  /** Whether something of a map has come. */
  #hasMap = false;
  readonly #chart = new KeyboardChart();

  constructor() {
    super({ filter: '', chart: untouchedChart });
    this.#chart.isPart = true;
    this.#chart.state = this.state.chart;
    this.#chart.tell = (message) => this.tell(message);
    this.#chart.keep = (chart) => this.remember({ chart });
  }

  protected override receive(message: FontToPage): void {
    if (message.type === 'font' || message.type === 'problem') {
      this.#shown = message;
      if (message.type === 'font') this.#showFirst(message.facts);
    } else {
      this.#hasMap ||= message.type === 'scene' || message.type === 'empty';
      this.#chart.receive(message);
    }
    this.requestUpdate();
  }

  /** Shows the preset that was shown before, or the first that plays something. */
  #showFirst({ presets }: FontFacts): void {
    const playing = presets.filter(({ regions }) => regions > 0);
    const preset = playing.find((one) => this.#isShown(one)) ?? playing[0];
    if (preset) this.#show(preset);
  }

  #show({ bank, program }: PresetNumbers): void {
    const preset = { bank, program };
    this.remember({ preset });
    this.tell({ type: 'show', preset });
    this.requestUpdate();
  }

  #isShown({ bank, program }: PresetNumbers): boolean {
    const { preset } = this.state;
    return preset?.bank === bank && preset.program === program;
  }

  protected override render(): TemplateResult {
    const shown = this.#shown;
    if (shown?.type === 'font') return this.#sheet(shown.file, shown.facts);
    return html`<section class="empty">
      <h1>${shown?.file ?? l10n.t('SoundFont')}</h1>
      <p role="status">${shown?.reason ?? l10n.t('The SoundFont is being read.')}</p>
    </section>`;
  }

  #sheet(file: string, facts: FontFacts): TemplateResult {
    const { presets, problems } = facts;
    const found = presets.filter((preset) => holds(preset, this.state.filter));
    return html`<header class="head">
        <h1>${facts.name || file}</h1>
        ${factList(file, facts)} ${problemList(problems)}
      </header>
      <div class="actions">
        ${button({
          id: 'convert-all',
          label: l10n.t('Convert All to SFZ…'),
          isDisabled: presets.length === 0,
          press: () => this.tell({ type: 'convert' }),
        })}
        <label
          >${l10n.t('Find a preset')}
          <input type="search" id="filter" .value=${this.state.filter} @input=${(event: Event) => this.#narrow(event)} />
        </label>
        <span class="quiet" role="status">${foundText(found.length, presets.length)}</span>
      </div>
      <div class="parts">
        <div class="presets" tabindex="0" role="region" aria-label=${l10n.t('Presets')}>${this.#table(found)}</div>
        ${
          this.#hasMap
            ? html`<section class="chosen" aria-label=${l10n.t('The preset that is chosen')}>${this.#chart}</section>`
            : nothing
        }
      </div>`;
  }

  #table(presets: readonly FontPreset[]): TemplateResult {
    return html`<table>
      <thead>
        <tr>
          <th scope="col" class="number">${l10n.t('Bank:program')}</th>
          <th scope="col">${l10n.t('Preset')}</th>
          <th scope="col" class="number">${l10n.t('Regions')}</th>
          <th scope="col">${l10n.t('Keys')}</th>
          <th scope="col">${l10n.t('Velocities')}</th>
          <th scope="col"><span class="quiet">${l10n.t('Actions')}</span></th>
        </tr>
      </thead>
      <tbody>
        ${presets.map((preset) => this.#row(preset))}
      </tbody>
    </table>`;
  }

  #row({ bank, program, name, regions, keys, velocities }: FontPreset): TemplateResult {
    const preset = { bank, program };
    const title = `${bank}:${program} ${name}`.trim();
    return html`<tr>
      <td class="number">${bank}:${program}</td>
      <th scope="row">
        <button
          type="button"
          class="row"
          aria-current=${this.#isShown(preset) ? 'true' : nothing}
          title=${l10n.t('Show the map of {0}', title)}
          ?disabled=${regions === 0}
          @click=${() => this.#show(preset)}
        >
          ${name || title}
        </button>
      </th>
      <td class="number">${regions}</td>
      <td>${keys ? range(keys, noteNameOf) : nothing}</td>
      <td>${velocities ? range(velocities, String) : nothing}</td>
      <td class="does">
        ${button({
          label: l10n.t('Show as text'),
          name: l10n.t('Show {0} as text', title),
          isSecondary: true,
          isDisabled: regions === 0,
          press: () => this.tell({ type: 'open', preset }),
        })}
        ${button({
          label: l10n.t('Convert to SFZ…'),
          name: l10n.t('Convert {0} to SFZ', title),
          isSecondary: true,
          isDisabled: regions === 0,
          press: () => this.tell({ type: 'convert', preset }),
        })}
      </td>
    </tr>`;
  }

  #narrow({ target }: Event): void {
    if (!(target instanceof HTMLInputElement)) return;
    this.remember({ filter: target.value });
    this.requestUpdate();
  }
}

function holds({ bank, program, name }: FontPreset, filter: string): boolean {
  const words = filter.toLowerCase().split(/\s+/).filter(Boolean);
  const text = `${bank}:${program} ${name}`.toLowerCase();
  return words.every((word) => text.includes(word));
}

function foundText(found: number, all: number): string {
  return found === all ? counted(all, 'preset') : l10n.t('{0} of {1}', found, counted(all, 'preset'));
}

function factList(file: string, { version, bits, samples, bytes, texts }: FontFacts): TemplateResult {
  const size = bytes < 1e6 ? `${Math.ceil(bytes / 1000)} kB` : `${(bytes / 1e6).toFixed(1)} MB`;
  return html`<dl class="facts">
    <dt>${l10n.t('File')}</dt>
    <dd>${file}, ${size}</dd>
    <dt>${l10n.t('Format')}</dt>
    <dd>SoundFont ${version}, ${bits} bit, ${counted(samples, 'sample')}</dd>
    ${texts.map(
      ({ kind, text }) =>
        html`<dt>${textNames[kind]()}</dt>
          <dd>${text}</dd>`,
    )}
  </dl>`;
}

function problemList(problems: readonly string[]): TemplateResult | typeof nothing {
  if (problems.length === 0) return nothing;
  return html`<ul class="oddities" aria-label=${l10n.t('What is odd in the file')}>
    ${problems.map((problem) => html`<li>${problem}</li>`)}
  </ul>`;
}

function range([low, high]: [number, number], show: (value: number) => string): string {
  return low === high ? show(low) : `${show(low)}–${show(high)}`;
}
