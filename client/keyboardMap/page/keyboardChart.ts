import type { PropertyValues, TemplateResult } from 'lit';
import { html, LitElement, nothing } from 'lit';
import type { MapRegion, MapScene } from '../../../server/map/mapScene';
import type { AuditionToPage } from '../../audition/messages';
import { AuditionStrip } from '../../audition/page/auditionStrip';
import { l10n } from '../../webview/page/l10n';
import type { MapFromPage, MapToPage } from '../messages';
import { chartTop } from './bar/chartTop';
import type { FilterBarParts } from './bar/filterBar';
import type { ChartState } from './chartState';
import { untouchedChart } from './chartState';
import { Arranging } from './editing/arranging';
import { MapDrop } from './editing/mapDrop';
import { MapKeys } from './editing/mapKeys';
import { MapPointer } from './editing/mapPointer';
import { emptyHint } from './emptyHint';
import { pictureOf } from './plot/picture';
import type { Plot } from './plot/plot';
import { plotIn } from './plot/plotIn';
import { plotRow } from './plot/plotRow';
import { PointerNotes } from './pointerNotes';
import type { ProblemsByHeader } from './shown/mapFilter';
import { filteredScene, noFilter, problemsByRegion } from './shown/mapFilter';
import { ShownMap } from './shown/shownMap';
import { chartSide } from './side/chartSide';
import type { DetailsEvents } from './side/details';
import { mapLists } from './side/mapLists';
import { MapViews } from './views/mapViews';
import { viewBar } from './views/viewBar';

const mostZoom = 12;

/** The keyboard map with its legend, details and sound: all of a page, or a part of one. */
export class KeyboardChart extends LitElement {
  /** Tells the host something. */
  tell: (message: MapFromPage) => void = () => {};
  /** Told of what is to be remembered. */
  keep: (state: ChartState) => void = () => {};
  /** Whether the page has more than the chart; then only keys and buttons show a region's text, not every click. */
  isPart = false;
  state: ChartState = untouchedChart;
  /** All of the document's map, and what is shown of it. */
  #scene: MapScene | undefined;
  #map: ShownMap | undefined;
  #problems: ProblemsByHeader = new Map();
  #reason = l10n.t('Waiting for a document.');
  #plot: Plot | undefined;
  /** Whether shapes must be drawn anew, not only what is marked in them. */
  #isOutOfDate = false;
  #hasMapFocus = false;
  readonly #events: DetailsEvents = {
    choose: (region) => this.#choose(region),
    goTo: (shape) => this.#goTo(shape),
    showOnly: (layer) => this.#showOnly(layer),
  };

  readonly #arranging = new Arranging({
    // Curves are looked at alone.
    map: () => (this.#views.name === 'map' ? this.#map : undefined),
    send: (arrangement) => this.tell({ type: 'arrange', arrangement }),
    changed: () => this.requestUpdate(),
  });
  readonly #pointer = new MapPointer({
    map: () => this.#map,
    plot: () => this.#plot,
    arranging: this.#arranging,
    hover: (shape) => this.#hover(shape),
    clicked: (shape) => this.#clicked(shape),
    press: (event) => this.#notes.press(event),
    look: (event) => this.#notes.look(event),
    release: () => this.#notes.release(),
    changed: () => this.requestUpdate(),
  });
  readonly #drop = new MapDrop({
    map: () => this.#map,
    plot: () => this.#plot,
    isPossible: () => this.#arranging.isPossible,
    dropped: (uris, key, after) => {
      this.#arranging.answered(l10n.t('The samples are being measured.'));
      this.tell({ type: 'addSamples', uris, key, after });
    },
    changed: () => this.requestUpdate(),
  });
  readonly #keys = new MapKeys({
    map: () => this.#map,
    arranging: this.#arranging,
    place: () => this.#pointer.place,
    moved: () => this.#moved(),
    enter: () => this.#enter(),
    only: () => this.#onlyActive(),
    undo: (type) => this.tell({ type }),
    zoom: (factor) => this.#zoomTo(factor === undefined ? 1 : this.#zoom * factor),
  });
  readonly #views = new MapViews((key) => this.tell({ type: 'wantMeasures', key }));
  #isLoudnessWanted = false;
  readonly #audition = new AuditionStrip();
  readonly #notes = new PointerNotes(this.#audition, () => this.#plot);

  constructor() {
    super();
    this.#audition.tell = (message) => this.tell(message);
    this.#audition.showSounding = (headers, keys) => {
      this.#map?.showSounding(headers, keys);
      this.requestUpdate();
    };
  }

  protected override createRenderRoot(): this {
    return this;
  }

  #remember(change: Partial<ChartState>): void {
    this.state = { ...this.state, ...change };
    this.keep(this.state);
  }

  /** Takes a message of the host; others than those of a map are not for it. */
  receive(message: MapToPage | { type: string }): void {
    if (this.#audition.receive(message)) return;
    const known = message as Exclude<MapToPage, AuditionToPage>;
    switch (known.type) {
      case 'scene':
        this.#showScene(known.scene, known.document);
        this.#arranging.textCame(known.version);
        break;
      case 'measures':
        this.#views.take(known.measures);
        if (this.#isLoudnessWanted) this.#byLoudness();
        this.#isOutOfDate = true;
        break;
      case 'focus':
        this.#focusMap();
        break;
      case 'arranged':
        this.#arranging.answered(known.message);
        break;
      case 'select':
        this.#map?.select(known.regions, !this.#hasFocus());
        this.#plot?.reveal(this.#map?.firstSelected);
        break;
      case 'problems':
        this.#problems = problemsByRegion(known.problems);
        this.#filterAnew();
        break;
      case 'empty':
        this.#scene = undefined;
        this.#map = undefined;
        this.#reason = known.reason;
        break;
      default:
        return;
    }
    this.requestUpdate();
  }

  #showScene(scene: MapScene, document: string): void {
    // What was chosen in another instrument is not meant here, though groups may have the same names.
    if (document !== this.state.document) {
      this.#remember({ document, hiddenLayers: [], filter: noFilter });
      this.#map = undefined;
      this.#arranging.forget();
      this.#pointer.place = undefined;
    }
    this.#problems = new Map();
    this.#views.forget(this.#map === undefined);
    this.#scene = scene;
    if (scene.regionCount === 0) {
      this.#map = undefined;
      this.#reason = l10n.t('{0} has no regions yet.', document);
    } else this.#filterAnew();
  }

  /** Shows what the filter leaves of the scene; what is chosen stays as far as it is there. */
  #filterAnew(): void {
    const scene = this.#scene;
    if (!scene || scene.regionCount === 0) return;
    const { filter, hiddenLayers } = this.state;
    const shown = filteredScene(scene, filter, this.#problems);
    this.#map = new ShownMap(shown, hiddenLayers, this.#problems, this.#map);
    this.#isOutOfDate = true;
    this.requestUpdate();
  }

  #showOnly(layer: number | undefined): void {
    this.#map?.showOnly(layer);
    this.#layersChanged();
  }

  /** Hides all groups but that of the active shape, or shows all again. */
  #onlyActive(): void {
    const layer = this.#map?.shape(this.#map.active)?.layer;
    if (layer !== undefined) this.#showOnly(this.#map?.onlyLayer === layer ? undefined : layer);
  }

  protected override render(): TemplateResult {
    return this.#map ? this.#chart(this.#map) : emptyHint(this.#reason, this.isPart, this.#drop);
  }

  #chart(map: ShownMap): TemplateResult {
    this.#views.choose(this.#arranging.isPossible ? this.state.view : 'map');
    const chart = this.#views.chart(map);
    return html`<div class="chart" @keydown=${(event: KeyboardEvent) => this.#keys.anywhere(event)}>
      ${chartTop({
        document: this.state.document,
        isPart: this.isPart,
        zoom: this.state.zoom,
        zoomTo: (zoom) => this.#zoomTo(zoom),
        audition: this.#audition,
        filters: this.#filters(map),
      })}
      <div class="body">
        ${plotRow({
          keys: this.#keys,
          pointer: this.#pointer,
          drop: this.#drop,
          focusChanged: (hasFocus) => this.#focusChanged(hasFocus),
          left: () => this.#hover(undefined),
          wheel: (event) => this.#wheel(event),
        })}
        ${chartSide(map, {
          chart,
          views: this.#views,
          arranging: this.#arranging,
          events: this.#events,
          hasMapFocus: this.#hasMapFocus,
          place: this.#pointer.place,
          focusMap: () => this.#focusMap(),
          byLoudness: () => this.#byLoudness(),
          report: () => this.tell({ type: 'report' }),
          savePicture: () => void this.#savePicture(map),
          showLayer: (layer, isShown) => {
            map.showLayer(layer, isShown);
            this.#layersChanged();
          },
          showOnly: (layer) => this.#showOnly(layer),
          lists: this.#lists(map),
        })}
      </div>
    </div>`;
  }

  #filters(map: ShownMap): FilterBarParts | undefined {
    return (
      this.#scene && {
        scene: this.#scene,
        problems: this.#problems,
        filter: this.state.filter,
        map,
        change: (change) => {
          this.#remember({ filter: { ...this.state.filter, ...change } });
          this.#filterAnew();
        },
        showOnly: (layer) => this.#showOnly(layer),
        views: this.#arranging.isPossible ? this.#viewBar(map) : nothing,
      }
    );
  }

  #viewBar(map: ShownMap): TemplateResult {
    const drawAnew = () => {
      this.#isOutOfDate = true;
      this.requestUpdate();
    };
    return viewBar(map, this.#views, {
      view: (view) => {
        this.#remember({ view });
        drawAnew();
      },
      key: (key) => {
        this.#views.chooseKey(key);
        drawAnew();
      },
    });
  }

  async #savePicture(map: ShownMap): Promise<void> {
    this.tell({ type: 'picture', ...(await pictureOf(map, this.#views.chart(map))) });
  }

  /** Shares velocities out by loudness, as soon as that is known. */
  #byLoudness(): void {
    const map = this.#map;
    const levels = map && this.#views.levels(map);
    this.#isLoudnessWanted = levels === undefined;
    if (levels) this.#arranging.perform({ kind: 'layers', shapes: map.held, levels });
    else this.#arranging.answered(l10n.t('The samples are being measured.'));
  }

  #lists(map: ShownMap): unknown {
    const { openLists } = this.state;
    return mapLists(map, this.#events, openLists, (name, isOpen) => {
      const others = this.state.openLists.filter((one) => one !== name);
      this.#remember({ openLists: isOpen ? [...others, name] : others });
    });
  }

  protected override updated(changed: PropertyValues): void {
    super.updated(changed);
    const map = this.#map;
    if (!map) {
      this.#plot = undefined;
      return;
    }
    if (!this.#plot) {
      this.#plot = plotIn(this, () => this.requestUpdate());
      this.#isOutOfDate = true;
    }
    const chart = this.#views.chart(map);
    if (this.#isOutOfDate || !this.#plot.shows(chart)) this.#plot.show(map, this.#zoom, chart);
    this.#isOutOfDate = false;
    this.#plot.mark(this.#hasFocus());
  }

  get #zoom(): number {
    return Math.max(1, Math.min(mostZoom, this.state.zoom));
  }

  #hasFocus(): boolean {
    return this.#hasMapFocus || (this.querySelector('.details')?.contains(document.activeElement) ?? false);
  }

  #focusChanged(hasFocus: boolean): void {
    this.#hasMapFocus = hasFocus;
    const map = this.#map;
    if (map && hasFocus) {
      map.active ??= map.firstSelected ?? map.order[0];
      this.#plot?.reveal(map.active);
    }
    this.requestUpdate();
  }

  #hover(index: number | undefined): void {
    const map = this.#map;
    if (!map || index === map.hovered) return;
    map.hovered = index;
    this.requestUpdate();
  }

  #clicked(index: number): void {
    this.#moved();
    const [region] = this.#map?.shape(index)?.regions ?? [];
    if (region && !this.isPart) this.#choose(region);
  }

  #choose({ header, source, start, end }: MapRegion): void {
    this.tell({ type: 'choose', header, source, start, end });
  }

  #goTo(shape: number): void {
    if (!this.#map) return;
    this.#map.active = shape;
    this.#map.hovered = undefined;
    this.#focusMap();
    this.#moved();
  }

  #focusMap(): void {
    this.querySelector<HTMLElement>('.map')?.focus();
  }

  #moved(): void {
    this.#plot?.reveal(this.#map?.active);
    this.requestUpdate();
  }

  /** One region is chosen at once; among several the details let choose. */
  #enter(): void {
    const shape = this.#map?.shape(this.#map.active);
    const [first] = shape?.regions ?? [];
    if (!shape || !first) return;
    if (shape.regions.length === 1) this.#choose(first);
    else this.querySelector<HTMLElement>('.details-body .region')?.focus();
  }

  #wheel(event: WheelEvent): void {
    if (!event.ctrlKey) return;
    event.preventDefault();
    const { left } = (event.currentTarget as HTMLElement).getBoundingClientRect();
    this.#zoomTo(this.#zoom * 1.2 ** -Math.sign(event.deltaY), event.clientX - left);
  }

  /** Zooms such that what stands at `offset` pixels from the left stays there; without it, the active shape or the middle. */
  #zoomTo(zoom: number, offset?: number): void {
    const wanted = Math.max(1, Math.min(mostZoom, zoom));
    if (wanted === this.#zoom) return;
    this.#plot?.zoomTo(wanted, offset ?? this.#plot.middleOf(this.#map?.active));
    this.#remember({ zoom: wanted });
    this.requestUpdate();
  }

  #layersChanged(): void {
    if (!this.#map) return;
    this.#remember({ hiddenLayers: this.#map.hiddenNames });
    this.#isOutOfDate = true;
    this.requestUpdate();
  }
}

customElements.define('keyboard-chart', KeyboardChart);
