import type { TemplateResult } from 'lit';
import { html } from 'lit';
import { PageElement } from '../../webview/page/pageElement';
import type { MapFromPage, MapToPage } from '../messages';
import type { ChartState } from './chartState';
import { untouchedChart } from './chartState';
import { KeyboardChart } from './keyboardChart';

/** The page of the keyboard map: nothing but its chart. */
export class MapPage extends PageElement<MapToPage, MapFromPage, ChartState> {
  readonly #chart = new KeyboardChart();

  constructor() {
    super(untouchedChart);
    this.#chart.state = this.state;
    this.#chart.tell = (message) => this.tell(message);
    this.#chart.keep = (state) => this.remember(state);
  }

  protected override receive(message: MapToPage): void {
    this.#chart.receive(message);
  }

  protected override render(): TemplateResult {
    return html`${this.#chart}`;
  }
}
