import { transposeBounds, tuneBounds } from '../../trade/bounds';
import { rounded } from '../../trade/decimal';
import { isFineTuning } from '../../trade/headings/fineTuning';
import { meansInTune } from '../../trade/languages/inTuneWords';
import type { Unit } from '../../trade/meaning';
import type { NumberReading } from '../../trade/readings/numberReading';
import { readNumber } from '../../trade/readings/numberReading';
import type { TuningName, TuningScale } from '../../trade/scales/tuningScale';
import { centsOf, tuningScale, tuningScales } from '../../trade/scales/tuningScale';
import { tunedBeforeIn, turnedTuningIn } from '../../trade/statements/amounts/turnedTuning';
import { CellReadings } from '../cells/cellReadings';
import { centsOff } from '../columns/byValues/foundPitches';
import type { ColumnReading } from '../columns/columnReading';
import { columnName, shortened, statedReason } from '../columns/columnReading';
import type { ZoneCells } from '../zones/zoneCells';

/** What the numbers of a column count. */
interface Counting {
  scale: TuningScale;
  /** How many of the numbers make up one of the scale; 1 but for parts of a unit, as 128ths of a semitone. */
  parts: number;
}

interface Amount {
  cell: number;
  column: ColumnReading;
  cents: number;
}

const unitScales: Readonly<Partial<Record<Unit, TuningScale>>> = {
  cents: 'cents',
  semitones: 'semitones',
  // Percent of a semitone are cents.
  percent: 'cents',
  linear: 'ratio',
};

/** Reads fine and coarse tuning; what one parameter cannot hold is shared between `transpose` and `tune`. */
export class TuningColumns {
  readonly #fine: ColumnReading | undefined;
  readonly #coarse: ColumnReading | undefined;
  /** How far the samples are off pitch: the tuning that corrects it is the opposite. */
  readonly #deviation: ColumnReading | undefined;
  /** The pitches that samples are meant to have, where `#deviation` gives those that they have. */
  readonly #aim: ColumnReading | undefined;
  readonly #numbers: CellReadings<NumberReading | undefined>;

  constructor(readonly table: ZoneCells) {
    const fine = table.column('tune');
    const turned = fine && turnedTuningIn(table.options.statements.texts, fine.heading);
    this.#fine = turned === undefined ? fine : undefined;
    this.#coarse = table.column('transpose');
    const deviation = table.column('deviation');
    const before = deviation && !fine ? tunedBeforeIn(table.options.statements.texts) : undefined;
    const open = before === undefined ? deviation : undefined;
    this.#deviation = fine ? (turned === undefined ? undefined : fine) : open;
    if (fine && turned !== undefined)
      table.noteColumn(
        fine,
        `The tuning in ${columnName(fine)} is written with the other sign, as "${shortened(turned)}" says.`,
      );
    if (deviation) {
      const aim = table.columns.find(({ index }) => index === deviation.aim);
      const says = `${columnName(deviation)} says ${aim ? `beside ${columnName(aim)} ` : ''}how far the samples are off pitch`;
      table.noteColumn(
        deviation,
        fine
          ? `${says}; it is not written, as ${columnName(fine)} gives the tuning.`
          : before !== undefined
            ? `${says}; it is not written, as "${shortened(before)}" says that they were tuned before.`
            : `${says}: the opposite is written as tuning, so that they sound in tune.`,
      );
      if (aim && this.#deviation === deviation) this.#aim = aim;
    }
    this.#numbers = new CellReadings(table.cells, (text) => readNumber(text));
  }

  /** Reads the tuning of all zones of the table; `rootCents` is added, in cents by zone. */
  read(rootCents: Float64Array | undefined): void {
    const { table } = this;
    const { zones, cells, notes } = table;
    if (this.#fine || this.#coarse || this.#deviation) {
      const tunes = zones.column('tune');
      const fineColumn = this.#fine ?? this.#deviation;
      const fineCounting = fineColumn && !this.#aim ? this.#countingOf(fineColumn, false) : undefined;
      const coarseCounting = this.#coarse && this.#countingOf(this.#coarse, true);
      const areCents = fineCounting?.scale === 'cents' && fineCounting.parts === 1;
      for (let zone = table.first; zone < table.end; zone++) {
        const row = zones.rows[zone];
        notes.row = row;
        const fine = table.cellOf(row, fineColumn);
        const coarse = table.cellOf(row, this.#coarse);
        const cents = coarse < 0 && areCents && !this.#deviation ? cells.number(fine) : Number.NaN;
        if (cents >= tuneBounds.least && cents <= tuneBounds.most) {
          if (rounded(cents) !== 0) tunes.set(zone, fine, rounded(cents));
        } else
          this.#share(
            zone,
            this.#offAim(fine, row) ?? this.#amount(fine, fineColumn, fineCounting),
            this.#amount(coarse, this.#coarse, coarseCounting),
          );
      }
    }
    if (rootCents) this.#addRoots(rootCents);
  }

  /** What a column counts: parts of a unit where that is said, else a scale. */
  #countingOf(column: ColumnReading, isCoarse: boolean): Counting {
    const { table } = this;
    const isChosen = tuningScales.some((one) => one === table.options.scales?.get(column.index));
    const part = isChosen ? undefined : table.countedPart(column, ['semitones', 'cents']);
    const scale = part && unitScales[part.whole];
    if (!part || scale === undefined) return { scale: this.#scaleOf(column, isCoarse), parts: 1 };
    column.scale = {
      taken: scale,
      reason: statedReason,
      options: tuningScales.map((id) => ({ id, label: id })),
    };
    return { scale, parts: part.parts };
  }

  /** The scale that a column counts in, said by its heading, its cells or the text around it, or found from its numbers. */
  #scaleOf(column: ColumnReading, isCoarse: boolean): TuningScale {
    const { table } = this;
    const { plain, unit } = table.numbersIn(column);
    const chosen = tuningScales.find((one) => one === table.options.scales?.get(column.index));
    // Cells with a unit count in it; what the text says is of those without.
    const said = [column.unit, table.stated(column)?.unit, unit].find((one) => one && unitScales[one]);
    const name: TuningName = isCoarse ? 'coarse' : isFineTuning(column.heading) ? 'fine' : undefined;
    const guess = tuningScale(plain, name);
    const scale = chosen ?? (said && unitScales[said]) ?? guess.scale;
    const reason = chosen ? '' : said ? statedReason : guess.reason;
    column.scale = { taken: scale, reason, options: tuningScales.map((id) => ({ id, label: id })) };
    if (chosen === undefined && said === undefined && guess.isOpen) {
      const others = guess.others.filter((one) => one !== 'ratio').join(' or ');
      const how = scale === 'ratio' ? 'a ratio of frequencies is' : `${scale} are`;
      table.noteColumn(
        column,
        `${columnName(column)} gives no unit of its tuning: ${how} assumed. If it is in ${others}, say so in the heading, as in "Tune (${others.startsWith('cents') ? 'cents' : 'semitones'})".`,
      );
    }
    return scale;
  }

  #share(zone: number, fine: Amount | undefined, coarse: Amount | undefined): void {
    const { zones } = this.table;
    const carrier = fine ?? coarse;
    if (!carrier) return;
    let semitones = (coarse?.cents ?? 0) / 100;
    let cents = fine?.cents ?? 0;
    if (!Number.isInteger(semitones) || cents < tuneBounds.least || cents > tuneBounds.most) {
      const total = Math.round((semitones * 100 + cents) * 1e6) / 1e6;
      semitones = Math.trunc(total / 100);
      cents = total - semitones * 100;
    }
    const written = Math.min(transposeBounds.most, Math.max(transposeBounds.least, semitones));
    if (written !== semitones) {
      const { cell, column } = coarse ?? carrier;
      this.table.approximate(
        cell,
        column,
        `is more than ${transposeBounds.most} semitones, the most that can be written`,
      );
    }
    if (written !== 0) zones.column('transpose').set(zone, (coarse ?? carrier).cell, rounded(written));
    if (rounded(cents) !== 0) zones.column('tune').set(zone, (fine ?? carrier).cell, rounded(cents));
  }

  /** What mends the pitch of a row that is beside the one that is meant. */
  #offAim(cell: number, row: number): Amount | undefined {
    const { table } = this;
    const [column, aim] = [this.#deviation, this.#aim];
    if (!column || !aim || cell < 0) return undefined;
    const meant = table.cellOf(row, aim);
    const [found, other] = [cell, meant].map((one) =>
      one < 0 ? undefined : table.reading(this.#numbers, one, one === cell ? column : aim),
    );
    const unit = column.unit === 'cents' ? 'cents' : 'Hz';
    const off = centsOff(other?.number ?? Number.NaN, found?.number ?? Number.NaN, unit);
    if (Number.isNaN(off)) {
      table.drop(cell, column, `cannot be compared with what stands in ${columnName(aim)}`);
      return undefined;
    }
    return { cell, column, cents: 0 - Math.round(off * 100) / 100 };
  }

  #amount(
    cell: number,
    column: ColumnReading | undefined,
    counting: Counting | undefined,
  ): Amount | undefined {
    if (!column || cell < 0 || !counting) return undefined;
    const reading = this.table.reading(this.#numbers, cell, column);
    if (!reading && meansInTune(this.table.cells.plain(cell))) {
      this.table.assume(cell, column, 'is read as in tune: nothing is changed');
      return undefined;
    }
    const unit = reading?.unit;
    const own = unit === undefined ? counting.scale : unitScales[unit];
    const parts = unit === undefined ? counting.parts : 1;
    const cents = reading && own ? centsOf(reading.number / parts, own) : Number.NaN;
    if (!Number.isFinite(cents)) {
      this.table.drop(
        cell,
        column,
        `is not a number of ${column.meaning === 'transpose' ? 'semitones' : 'cents'}`,
      );
      return undefined;
    }
    return { cell, column, cents: column === this.#deviation ? 0 - cents : cents };
  }

  /** Adds what roots between keys leave over. */
  #addRoots(rootCents: Float64Array): void {
    const { zones, first, end } = this.table;
    const [tunes, transposes] = [zones.column('tune'), zones.column('transpose')];
    const roots = zones.column('pitch_keycenter');
    for (let zone = first; zone < end; zone++) {
      if (rootCents[zone] === 0) continue;
      const own = tunes.cells[zone] < 0 ? 0 : tunes.numbers[zone];
      let cents = rounded(own + rootCents[zone]);
      const cell = Math.max(roots.cells[zone], tunes.cells[zone]);
      if (cents < tuneBounds.least || cents > tuneBounds.most) {
        const step = Math.sign(cents);
        const before = transposes.cells[zone] < 0 ? 0 : transposes.numbers[zone];
        transposes.set(zone, Math.max(cell, transposes.cells[zone]), before + step);
        cents = rounded(cents - step * 100);
      }
      tunes.set(zone, cell, cents);
    }
  }
}
