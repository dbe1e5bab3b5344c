import { keyText } from '../../../server/model/wording/rangeWords';
import { l10n } from '../../webview/page/l10n';
import type { FromVoice } from '../voiceMessages';

/** What a note would play. */
export type LookedAtNote = Extract<FromVoice, { type: 'looked' }>;

/** What keeps regions silent, in a few words. */
const reasonWords: Readonly<Record<string, string>> = {
  velocity: 'velocity',
  keyswitch: 'keyswitch',
  controller: 'controller',
  sequence: 'round robin',
  random: 'random',
  trigger: 'trigger',
  bend: 'pitch bend',
  pressure: 'aftertouch',
  sample: 'sample',
  off: 'switched off',
};

/** Says what a note would play, and why the rest would stay silent. */
export function readoutText(looked: LookedAtNote | undefined): string {
  if (!looked) return l10n.t('Point at the map to see what would sound and what would not.');
  const place = l10n.t('{0}, velocity {1}', keyText(looked.key), looked.velocity);
  const sounds =
    looked.sounds.length === 1
      ? l10n.t('1 region sounds')
      : l10n.t('{0} regions sound', looked.sounds.length);
  const silent = looked.silent.map(
    ({ reason, count, message }) =>
      `${l10n.t('{0} silent', count)} (${l10n.t(reasonWords[reason] ?? reason)}): ${message}`,
  );
  return [`${place}: ${sounds}.`, ...silent].join(' ');
}
