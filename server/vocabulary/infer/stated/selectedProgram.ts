import type { Column } from '../values/column';
import type { Rows } from '../values/rows';
import { meaningsOf } from '../words/meanings';
import { nameWords } from '../words/nameWords';
import type { UnusedPlace } from './leftOut';

/** Words for the one of several that is loaded. A default may be one among others that sound too. From memory. */
const selectedWords: ReadonlySet<string> = new Set(
  'selected select selection active current chosen loaded gewahlt ausgewahlt auswahl aktiv aktuell geladen selectionne selection choisi actif actuel charge seleccionado seleccion activo elegido actual cargado selezionato selezione attivo scelto attuale caricato selecionado selecao ativo escolhido geselecteerd gekozen actief geladen vald valgt valittu wybrany vybrany aktivni'.split(
    ' ',
  ),
);

/** Words for whole sounds of which one is loaded at a time; a layer or a section that is selected is so in an editor alone. From memory. */
const programWords: ReadonlySet<string> = new Set(
  'program programme programs preset patch kit programm klangprogramm programa programma voreinstellung reglage prereglage preajuste ajuste preimpostazione'.split(
    ' ',
  ),
);

/**
 * Programs that are not loaded: where an element around them says which one of theirs is by its name or number, and all of them have
 * one. Nothing where key switches choose among them.
 */
export function unselectedPrograms({ columns }: Rows, chain: readonly string[]): UnusedPlace[] {
  const region = chain.length - 1;
  if (columns.some(({ own, around }) => meaningsOf(own, around, [])[0]?.target.startsWith('sw_'))) return [];
  for (const place of columns) {
    const isProgram = nameWords(chain[place.level] ?? '').some((word) => programWords.has(word));
    if (!isProgram || place.level >= region || place.listed || place.around.length > 0) continue;
    const selecting = columns.find((one) => one.level < place.level && isSelecting(one));
    const unselected = selecting && unselectedIn(place, selecting);
    if (unselected) return unselected;
  }
  return [];
}

function isSelecting({ own, listed }: Column): boolean {
  const isWord = (word: string) => selectedWords.has(word);
  return !listed && own.some(isWord) && own.every((word) => isWord(word) || isNameOrProgram(word));
}

function isNameOrProgram(word: string): boolean {
  return programWords.has(word) || ['name', 'id', 'number', 'no', 'index'].includes(word);
}

/** The names of a place that are not the one selected; `undefined` where some have none, or none is selected. */
function unselectedIn(column: Column, selecting: Column): UnusedPlace[] | undefined {
  const [on, off] = [new Set<string>(), new Set<string>()];
  let said = '';
  for (const [row, cell] of column.cells.entries()) {
    const wanted = selecting.cells[row]?.text.trim();
    if (!cell || wanted === undefined) return undefined;
    said = wanted;
    (cell.text.trim() === wanted ? on : off).add(cell.text);
  }
  if (on.size === 0 || [...on].some((name) => off.has(name))) return undefined;
  const comment = `${selecting.at.replace(/^@/, '')}="${said}"`;
  return [...off].map((value) => ({ column, value, comment }));
}
