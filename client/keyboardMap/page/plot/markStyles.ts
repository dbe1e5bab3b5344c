/** How marks of one class are painted, as the style sheet says. */
export interface MarkStyle {
  fill: string | undefined;
  fillOpacity: number;
  stroke: string | undefined;
  strokeOpacity: number;
  strokeWidth: number;
  dash: number[];
  lineCap: CanvasLineCap;
  /** Of texts. */
  font: string;
  /** Whether the stroke lies under the letters. */
  isOutlined: boolean;
}

/**
 * What the style sheet says of the classes of marks. Elements that nobody sees carry the classes, so that pictures painted
 * on a canvas take their colours from the theme in the same way as elements do.
 */
export class MarkStyles {
  readonly #probes: SVGSVGElement;
  readonly #known = new Map<string, MarkStyle>();

  constructor(parent: HTMLElement) {
    this.#probes = document.createElementNS(svgNamespace, 'svg');
    this.#probes.setAttribute('class', 'probes');
    this.#probes.setAttribute('aria-hidden', 'true');
    parent.append(this.#probes);
  }

  of(className: string): MarkStyle {
    let style = this.#known.get(className);
    if (!style) {
      style = this.#read(className);
      this.#known.set(className, style);
    }
    return style;
  }

  /** The theme is another. */
  forget(): void {
    this.#known.clear();
  }

  #read(className: string): MarkStyle {
    const probe = document.createElementNS(svgNamespace, 'text');
    probe.setAttribute('class', className);
    this.#probes.append(probe);
    const style = getComputedStyle(probe);
    const dash = style.strokeDasharray === 'none' ? [] : style.strokeDasharray.split(/[ ,]+/);
    const read: MarkStyle = {
      fill: style.fill === 'none' ? undefined : style.fill,
      fillOpacity: Number(style.fillOpacity),
      stroke: style.stroke === 'none' ? undefined : style.stroke,
      strokeOpacity: Number(style.strokeOpacity),
      strokeWidth: Number.parseFloat(style.strokeWidth),
      dash: dash.map(Number.parseFloat),
      lineCap: style.strokeLinecap as CanvasLineCap,
      font: `${style.fontStyle} ${style.fontWeight} ${style.fontSize} ${style.fontFamily}`,
      isOutlined: style.paintOrder.startsWith('stroke'),
    };
    probe.remove();
    return read;
  }
}

const svgNamespace = 'http://www.w3.org/2000/svg';
