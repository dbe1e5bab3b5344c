import { jsonText } from '../../model/text/visibleText';
import { lineNotes } from '../../model/writing/lineNotes';
import { explain as explainNote } from '../../playing/explaining/explain';
import type { PlayedNote } from '../../playing/sweep/playedNote';
import { keyswitchState, playUpTo } from '../../playing/sweep/playedNote';
import { CommandError } from '../commandError';
import { fontOptions } from '../input/fontInput';
import { folderOfInput, readInputOrFolder } from '../input/input';
import { playableInput } from '../input/playableInput';
import { readAny, tableOptions } from '../input/readAny';
import { regionPlace } from '../input/regionPlaces';
import { explanationText } from '../output/explanationText';
import { tellNotes } from '../output/notes';
import { controllerWords, keyWord, wholeWord } from '../output/noteWords';
import type { Terminal } from '../terminal';
import { readWords } from '../words';

const mostStrikes = 100_000;
const highestSeed = 0xffffffff;

/** `zonewright explain`: which regions answer a note, and why each other one does not. */
export async function explainCommand(args: readonly string[], terminal: Terminal): Promise<number> {
  const { paths, options, lists } = readWords(args, {
    key: 'text',
    velocity: 'text',
    controller: 'texts',
    keyswitch: 'text',
    strike: 'text',
    seed: 'text',
    format: ['text', 'json'],
    ...tableOptions,
    ...fontOptions,
  });
  const [name, ...more] = paths;
  if (name === undefined || more.length > 0) throw new CommandError('explain takes one file');
  const key = keyWord('key', options.key);
  const velocity = wholeWord('velocity', options.velocity, [1, 127]);
  if (key === undefined || velocity === undefined)
    throw new CommandError('explain needs --key and --velocity');
  const keyswitch = keyWord('keyswitch', options.keyswitch);
  const controllers = [...controllerWords(lists.controller)].map(([controller, value]) => ({
    controller,
    value,
  }));
  const strike = wholeWord('strike', options.strike, [1, mostStrikes]) ?? 1;
  const seed = wholeWord('seed', options.seed, [0, highestSeed]) ?? 0;
  const input = await readInputOrFolder(terminal, name, options);
  const { instrument, notes } = await readAny(terminal, input, options, folderOfInput(input));
  const playable = await playableInput(terminal, input, instrument);
  const note: PlayedNote = {
    ...(keyswitch !== undefined && keyswitchState(playable, keyswitch)),
    controllers,
    key,
    velocity,
    strike,
  };
  const { player, timeSeconds } = playUpTo(playable, note, seed);
  const { sounds, silent } = explainNote(playable, player, { key, velocity, timeSeconds });
  const place = (region: number) => regionPlace(terminal, instrument, region);
  const explained = {
    sounds: sounds.map(place),
    silent: silent.map(({ region, reason, message }) => ({ ...place(region), reason, message })),
  };
  if (options.format === 'json') {
    await terminal.out(jsonText(explained));
    return 0;
  }
  await terminal.out(explanationText(note, explained));
  tellNotes(terminal, input.name, lineNotes(instrument, notes));
  return 0;
}
