import { readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { choicesTable } from '../../../server/playing/choicesTable';
import { playingChoices } from '../../../server/playing/playingChoices';

/** The title of the test that shows each choice. */
const shown: Readonly<Record<keyof typeof playingChoices, string>> = {
  pedalDown: 'is down from 64 on, and lets notes go in the order of their keys',
  firstControllers: 'start at the usual values where set_cc does not say',
  switchZone: 'is one of the keys that regions name where no zone is set',
  switchFirst: 'counts for the region on the keyswitch itself',
  switchOffset: 'moves with note_offset, octave_offset and with what moves keyswitches alone',
  turns: 'count for each region the strikes that meet its other conditions',
  oneRandomNumber:
    'let exactly one of the regions sound that share them out, each about as often as its part is wide',
  deadNotes: 'sound where the note started nothing',
  decayStages: 'get quieter in stages',
  firstAndLegato: 'tell a first note from a legato one by the keys that are held',
  sostenuto: 'holds the notes whose keys are down as it goes down, and no later ones',
  pedalUp: 'is down from 64 on, and lets notes go in the order of their keys',
  controllerStart:
    'start a region by a controller as its value enters the range, at velocity 127, and no key does',
  controllerStop: 'start a region by a fine controller, and stop it by another range',
  ownLayers: 'leave the layers of one note alone',
  notSilenced: 'are not group 0',
  soundlessStart: 'silence also by a region that has no sound: end=-1, no sample',
  polyphonyScope: 'end the oldest of the group, by its off_mode',
  notePolyphonyScope: 'leave release regions and other groups out of the strikes of a key',
  noteOffInDelay: 'lets a note that waits for its delay not sound, except one_shot',
  timer: 'measure the time from the last start of the group',
  noPreviousVelocity: 'give the velocity of the note before to the sound, not to the choice of regions',
  furtherControllers: 'know further controllers that notes, wheel and pressure set',
  tempo: 'ask for the channel, the program and the tempo',
  modeMessages: 'comes by the channel mode messages',
  reasonNames: 'names the reason of channel and program a controller, of tempo and timer a trigger',
};

describe('the choices where documents leave something open', () => {
  const folder = new URL('.', import.meta.url);
  const tests = readdirSync(folder, { recursive: true, encoding: 'utf8' })
    .filter((name) => name.endsWith('.test.ts') && !name.startsWith('choices'))
    .map((name) => readFileSync(new URL(name, folder), 'utf8'))
    .join('\n');

  it.each(Object.entries(shown))('%s is shown by a test', (_, title) => {
    expect(tests).toContain(`it('${title}'`);
  });

  it('stand in the documentation', () => {
    const page = readFileSync(fileURLToPath(new URL('../../../docs/choices.md', import.meta.url)), 'utf8');
    expect(page).toContain(choicesTable(Object.values(playingChoices)));
  });
});
