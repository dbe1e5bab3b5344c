import type { Notation } from '../model/notation';
import { editSfz, insertInSfz } from './edit';
import { formatSfz } from './format';
import { placeInSfz } from './place';
import { readSfz, readSfzInSteps } from './read';
import { sfzSpelling } from './spelling';
import { writeSfz, writeSfzInSteps } from './write';

/** SFZ text as a notation of the instrument model. */
export const sfzNotation: Notation = {
  format: 'sfz',
  read: readSfz,
  readInSteps: readSfzInSteps,
  placeAt: placeInSfz,
  edit: editSfz,
  insertInSteps: insertInSfz,
  write: writeSfz,
  writeInSteps: writeSfzInSteps,
  layOut: formatSfz,
  spelling: sfzSpelling,
};
