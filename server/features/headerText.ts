import { HeaderKind } from '../model/headerKinds';

const texts: Readonly<Record<HeaderKind, string>> = {
  [HeaderKind.control]:
    'Settings for the text that follows: where samples are, how keys are shifted, names of controllers.',
  [HeaderKind.global]: 'Values for all regions that follow, up to the next global header.',
  [HeaderKind.master]: 'Values for several groups; groups and regions override them.',
  [HeaderKind.group]: 'Values that the regions of the group share; a region overrides them.',
  [HeaderKind.region]: 'One sample with the keys, velocities and conditions that it answers to.',
  [HeaderKind.curve]:
    'A curve from 128 points; points that are not set lie on straight lines between their neighbours.',
  [HeaderKind.effect]: 'An effect and how much of the sound goes through it.',
  [HeaderKind.midi]: 'How MIDI messages are changed before regions see them.',
  [HeaderKind.sample]: 'A sample whose data stands in the text.',
  [HeaderKind.unknown]: 'The format does not know this header.',
};

/** What a header is for, in a sentence. */
export function headerSentence(kind: HeaderKind): string {
  return texts[kind];
}
