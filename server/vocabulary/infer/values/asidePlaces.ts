import { meansShared } from '../../../trade/sharedWords';
import type { Proposal } from '../proposal';
import type { InferredTarget } from '../words/meaningRules';
import { conceptsOf } from '../words/tradeWords';
import type { Column } from './column';
import { standsInDefaults } from './defaultElements';

/** What an effect has as well as a region: levels, tunings and places between left and right. */
const soundTargets: ReadonlySet<InferredTarget> = new Set('volume attenuation tune transpose pan'.split(' '));

/** Words for the whole, for what is set of it and for how it sounds. From memory. */
const wholeWords: ReadonlySet<string> = new Set(
  'overall whole entire total instrument program programme preset patch main mix mixing sound sounds tone amp amplifier options option setup config configuration defs def base gesamt ganze ganzes einstellungen einstellung klang ensemble reglages reglage son ajustes ajuste sonido conjunto impostazioni impostazione suono insieme ajustamentos definicoes som instellingen instelling geluid geheel installningar ljud helhet indstillinger lyd innstillinger asetukset aani ustawienia brzmienie nastaveni zvuk ayarlar ses beallitasok hangzas ρυθμισεις ηχος настройки звук 设置 設定 设定 音色 설정 音 소리'.split(
    ' ',
  ),
);

/** What moves or shapes the sound, whose level and tuning are none of a region. Envelopes are not among them: their `att` is an attack. */
const movingConcepts: ReadonlySet<string> = new Set(
  'lfo filter cutoff reso bend xfade rand track ctrl'.split(' '),
);

/** Units of what sounds. */
const soundUnits: ReadonlySet<string> = new Set(['dB', 'cents', 'semis']);

/** Names of things, which say no more than that there is one. */
const bareThings: ReadonlySet<string> = new Set(['body', 'content']);

/** From this weight on a name says well what a place holds. */
const wellNamed = 0.8;

/**
 * Without what stands in elements that are only beside regions: no region stands in them, and their name neither speaks of all regions nor
 * is known to hold such a value, as that of an effect. They give no levels, tunings and places, and nothing else where one
 * name alone is known of theirs: the `size` of a board is no length. What is called after defaults goes before others.
 */
export function withoutAsides(proposals: readonly Proposal[], region: number): Proposal[] {
  const isOuter = ({ level, listed, around }: Column) => level < region && !listed && around.length > 0;
  const idOf = ({ column, meaning }: Proposal) => `${column.level} ${meaning.target}`;
  const outer = proposals.filter(({ column }) => isOuter(column));
  const shared = new Set(outer.filter(({ column }) => isShared(column)).map(idOf));
  const placeOf = ({ level, at }: Column) => `${level} ${at.split(/[/[]/, 1)[0]}`;
  const named = new Map<string, Set<Column>>();
  for (const { column, meaning } of outer) {
    if (meaning.weight < wellNamed || meaning.target === 'label') continue;
    named.set(placeOf(column), (named.get(placeOf(column)) ?? new Set()).add(column));
  }
  const hasSeveralNames = (column: Column) => (named.get(placeOf(column))?.size ?? 0) > 1;
  const left = new Set(
    outer
      .filter(({ column }) => !isShared(column))
      .filter(
        (one) =>
          (standsAside(one.column) &&
            (soundTargets.has(one.meaning.target) ||
              isInSoundUnit(one.column) ||
              (one.meaning.target !== 'label' && !hasSeveralNames(one.column)))) ||
          (soundTargets.has(one.meaning.target) && shared.has(idOf(one))),
      )
      .map(({ column }) => column),
  );
  return proposals.filter(({ column }) => !left.has(column));
}

function isInSoundUnit({ own }: Column): boolean {
  return own.some((word) => conceptsOf(word)?.concepts.some((one) => soundUnits.has(one)));
}

/** Whether an element beside regions has a name that says nothing of what it could give them. */
export function standsAside(column: Column): boolean {
  const [outermost] = column.around;
  return (
    outermost !== undefined &&
    !isShared(column) &&
    !outermost.some(
      (word) =>
        wholeWords.has(word) ||
        (!bareThings.has(word) && conceptsOf(word)?.concepts.some((one) => !movingConcepts.has(one))),
    )
  );
}

function isShared(column: Column): boolean {
  return standsInDefaults(column) || column.around.some((words) => meansShared(words.join(' ')));
}
