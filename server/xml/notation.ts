import type { Notation } from '../model/notation';
import { editXml } from './edit';
import { formatXml } from './format';
import { insertElements } from './insert';
import { placeInXml } from './place';
import { readXml, readXmlInSteps } from './read';
import { xmlSpelling } from './spelling';
import { writeXml, writeXmlInSteps } from './write';

/** Instrument XML as a notation of the instrument model. */
export const xmlNotation: Notation = {
  format: 'xml',
  read: readXml,
  readInSteps: readXmlInSteps,
  placeAt: placeInXml,
  edit: editXml,
  insertInSteps: insertElements,
  write: writeXml,
  writeInSteps: writeXmlInSteps,
  layOut: formatXml,
  spelling: xmlSpelling,
};
