import type { TemplateResult } from 'lit';
import { html, svg } from 'lit';
import type { Box } from '../../../../server/map/layout';
import { px } from '../../../../server/map/layout';
import type { Mark } from '../../../../server/map/marks';
import { l10n } from '../../../webview/page/l10n';
import type { MapProblem } from '../../messages';

type Severity = MapProblem['severity'];

/** From worst to least. */
const severities: readonly Severity[] = ['error', 'warning', 'information'];

const radius = 5.5;
/** Shapes with a side below so many pixels carry a spot instead of a sign. */
const leastSigned = 16;

/** A cross, a stroke over a dot and a dot over a stroke: signs that differ without colour, around the point 0, 0. */
const strokes: Readonly<Record<Severity, string>> = {
  error: 'm-2.5 -2.5l5 5m0 -5l-5 5',
  warning: 'm0 -3.2v4m0 1.6v.8',
  information: 'm0 -3.2v.8m0 1.6v4',
};

/** The sign of what is worst of some problems, in the lower right corner of a shape's box. */
export function problemMarks(problems: readonly MapProblem[], { x, y, width, height }: Box): Mark[] {
  const worst = severities.find((severity) => problems.some((one) => one.severity === severity));
  if (!worst) return [];
  if (Math.min(width, height) < leastSigned) {
    const side = Math.min(5, width, height);
    return [
      {
        kind: 'box',
        className: `spot ${worst}`,
        box: { x: x + width - side, y: y + height - side, width: side, height: side },
      },
    ];
  }
  const place = { x: x + width - radius - 2.5, y: y + height - radius - 2.5 };
  return [
    { kind: 'path', className: `problem-ground ${worst}`, data: disk(place.x, place.y) },
    {
      kind: 'path',
      className: `problem-stroke ${worst}`,
      data: `M${px(place.x)} ${px(place.y)}${strokes[worst]}`,
    },
  ];
}

/** The same sign in a line of text. */
export function problemSign(severity: Severity): TemplateResult {
  const names: Readonly<Record<Severity, string>> = {
    error: l10n.t('Error'),
    warning: l10n.t('Warning'),
    information: l10n.t('Information'),
  };
  return html`<svg class="problem-sign" width="14" height="14" viewBox="-7 -7 14 14" role="img" aria-label=${names[severity]}>
    ${svg`<path class="problem-ground ${severity}" d=${disk(0, 0)}/><path class="problem-stroke ${severity}" d="M0 0${strokes[severity]}"/>`}
  </svg>`;
}

function disk(x: number, y: number): string {
  return `M${px(x - radius)} ${px(y)}a${radius} ${radius} 0 1 0 ${2 * radius} 0a${radius} ${radius} 0 1 0 ${-2 * radius} 0z`;
}
