import type { TemplateResult } from 'lit';
import { html, nothing } from 'lit';
import type { Gesture } from '../../../../server/gestures/gesture';
import { noteNameOf } from '../../../../server/model/keys';
import { l10n } from '../../../webview/page/l10n';
import type { ShownMap } from '../shown/shownMap';
import type { Arranging } from './arranging';

/** What the buttons that change shapes are about. */
export interface ChangeParts {
  map: ShownMap;
  arranging: Arranging;
  /** The place that was clicked last. */
  place: { key: number; velocity: number } | undefined;
  /** Takes the shapes into the hand, so that arrow keys move them. */
  hold(): void;
  /** Shares velocities out by what is measured. */
  byLoudness(): void;
}

interface Action {
  label: string;
  /** The key that does the same while the map has the focus. */
  shortcut?: string;
  gesture?: Gesture;
  press(): void;
}

/** Buttons for what can be done with the shapes that are chosen; pointing at one shows what it would change. */
export function changeButtons(parts: ChangeParts): TemplateResult | typeof nothing {
  const { map, arranging } = parts;
  if (map.held.length === 0 || !arranging.isPossible) return nothing;
  if (arranging.isByKeys) return holdButtons(arranging);
  const look = (gesture: Gesture | undefined) => () => arranging.look(gesture);
  return html`<div class="changes" role="group" aria-label=${l10n.t('Change')}>
    ${actions(parts).map(
      ({ label, shortcut, gesture, press }) => html`<button
        type="button"
        class="row"
        aria-keyshortcuts=${shortcut ?? nothing}
        @click=${press}
        @pointerenter=${look(gesture)}
        @pointerleave=${look(undefined)}
        @focus=${look(gesture)}
        @blur=${look(undefined)}
      >
        ${label}${shortcut === undefined ? nothing : html` <kbd>${shortcut}</kbd>`}
      </button>`,
    )}
  </div>`;
}

function holdButtons(arranging: Arranging): TemplateResult {
  return html`<div class="changes" role="group" aria-label=${l10n.t('Change')}>
    <button type="button" class="row" @click=${() => arranging.finish()}>
      ${l10n.t('Write it')} <kbd>Enter</kbd>
    </button>
    <button type="button" class="row" @click=${() => arranging.cancel()}>
      ${l10n.t('Leave it')} <kbd>${l10n.t('Escape')}</kbd>
    </button>
    <p class="quiet">
      ${l10n.t(
        'Arrow keys move, with Shift further. G goes to the next side or corner, N moves a shared border with or without neighbours, R moves the root key along or leaves it.',
      )}
    </p>
  </div>`;
}

function actions(parts: ChangeParts): Action[] {
  const { map, arranging, hold, byLoudness } = parts;
  const shapes = map.held;
  const make = (label: string, gesture: Gesture, shortcut?: string): Action => ({
    label,
    gesture,
    ...(shortcut !== undefined && { shortcut }),
    press: () => arranging.perform(gesture),
  });
  const keys = splitGesture(parts, 'keys');
  const velocities = splitGesture(parts, 'velocities');
  const list: Action[] = [{ label: l10n.t('Move with arrow keys'), shortcut: 'G', press: hold }];
  if (keys) list.push(make(l10n.t('Split below {0}', noteNameOf(keys.at)), keys, 'S'));
  if (velocities) list.push(make(l10n.t('Split below velocity {0}', velocities.at), velocities, 'V'));
  if (shapes.length > 1) {
    list.push(
      make(l10n.t('Join into the first'), { kind: 'join', shapes }, 'J'),
      make(l10n.t('Keys to the nearest roots'), { kind: 'spread', shapes }),
      make(l10n.t('Velocity layers equally high'), { kind: 'layers', shapes }),
      { label: l10n.t('Velocity layers by loudness'), press: byLoudness },
    );
  }
  return list;
}

/** A split of the held shapes at the place that was clicked last, or in the middle where that is elsewhere. */
export function splitGesture(
  { map, place }: Pick<ChangeParts, 'map' | 'place'>,
  axis: 'keys' | 'velocities',
): Extract<Gesture, { kind: 'split' }> | undefined {
  const shape = map.shape(map.active ?? map.held[0]);
  if (!shape) return undefined;
  const [low, high] =
    axis === 'keys' ? [shape.lowKey, shape.highKey] : [shape.lowVelocity, shape.highVelocity];
  if (low === high) return undefined;
  const wanted = axis === 'keys' ? place?.key : place?.velocity;
  const isInside = wanted !== undefined && wanted > low && wanted <= high;
  return { kind: 'split', shapes: map.held, axis, at: isInside ? wanted : Math.ceil((low + high) / 2) };
}
