import { effectiveValues } from '../../../server/model/effectiveValues';
import type { Instrument } from '../../../server/model/instrument';
import { randomValue, voiceSeed } from '../../../server/playing/player/randomValues';
import type { Action } from './actions';
import { startText } from './actions';

interface Voice {
  region: number;
  key: number;
  velocity: number;
  note: number;
  startSeconds: number;
  endsWithNote: boolean;
}

interface Note {
  key: number;
  velocity: number;
  number: number;
  seconds: number;
  hasStarted: boolean;
}

type Values = Record<string, number | string>;

/**
 * Plays an instrument as its opcodes are described, going through all regions and all that was ever played for every
 * answer. Slow and plain; a judge for the real player. Knows what the property test writes, and no more.
 */
export class SlowPlayer {
  readonly #regions: Values[];
  readonly #numbers: number[];
  readonly #instrument: Instrument;
  readonly #seed: number;
  readonly #controllers = new Map<number, number>();
  readonly #strikes: { key: number; velocity: number }[] = [];
  readonly #down = new Map<number, Note>();
  #held: { note: Note; caught: boolean; region: number }[] = [];
  #caught: Note[] = [];
  #voices: Voice[] = [];
  readonly #turns = new Map<number, number>();
  #bend = 0;
  #pressure = 0;
  #trigger = 0;

  constructor(instrument: Instrument, seed: number) {
    this.#regions = [...instrument.regions].map((region) => effectiveValues(instrument, region));
    this.#numbers = [...this.#regions.keys()];
    this.#instrument = instrument;
    this.#seed = seed;
  }

  /** Does something at a time; tells what starts, is released and stops, as `Playing` does. */
  act(action: Action, seconds: number): string[] {
    switch (action.kind) {
      case 'on':
        return this.#on(action.key, action.velocity, seconds);
      case 'off':
        return this.#off(action.key, seconds);
      case 'controller':
        return this.#controller(action.number, action.value, seconds);
      case 'bend':
        this.#bend = action.value;
        return [];
      case 'pressure':
        this.#pressure = action.value;
        return [];
      case 'ended':
        this.#voices.shift();
        return [];
    }
  }

  #value(region: number, name: string, without: number): number {
    const value = this.#regions[region]?.[name];
    return typeof value === 'number' ? value : without;
  }

  #word(region: number, name: string, without: string): string {
    return String(this.#regions[region]?.[name] ?? without);
  }

  #controllerValue(number: number): number {
    return this.#controllers.get(number) ?? 0;
  }

  #lastSwitch(region: number): number {
    const low = this.#value(region, 'sw_lokey', 0);
    const high = this.#value(region, 'sw_hikey', 127);
    const pressed = this.#strikes.filter(({ key }) => key >= low && key <= high);
    return pressed.at(-1)?.key ?? this.#value(region, 'sw_default', -1);
  }

  /** All that has to hold besides key, velocity, trigger and turn. */
  #isMet(region: number): boolean {
    const values = this.#regions[region] as Values;
    const random = randomValue(voiceSeed(this.#seed, this.#trigger, -1), 0);
    return Object.entries(values).every(([name, value]) => {
      if (typeof value !== 'number') return true;
      switch (name) {
        case 'sw_last':
          return this.#lastSwitch(region) === value;
        case 'sw_down':
          return this.#down.has(value);
        case 'sw_up':
          return !this.#down.has(value);
        case 'sw_previous':
          return this.#strikes.at(-2)?.key === value;
        case 'lorand':
          return random >= value;
        case 'hirand':
          return random < value;
        case 'lobend':
          return this.#bend >= value;
        case 'hibend':
          return this.#bend <= value;
        case 'lochanaft':
          return this.#pressure >= value;
        case 'hichanaft':
          return this.#pressure <= value;
      }
      const gate = /^(lo|hi)cc(\d+)$/.exec(name);
      if (!gate) return true;
      const now = this.#controllerValue(Number(gate[2]));
      return gate[1] === 'lo' ? now >= value : now <= value;
    });
  }

  #answers(region: number, key: number, velocity: number): boolean {
    if (this.#value(region, 'lokey', 0) < 0) return false;
    return (
      key >= this.#value(region, 'lokey', 0) &&
      key <= this.#value(region, 'hikey', 127) &&
      velocity >= this.#value(region, 'lovel', 1) &&
      velocity <= this.#value(region, 'hivel', 127)
    );
  }

  #isTurn(region: number): boolean {
    const turn = this.#turns.get(region) ?? 0;
    this.#turns.set(region, turn + 1);
    return (turn % this.#value(region, 'seq_length', 1)) + 1 === this.#value(region, 'seq_position', 1);
  }

  #startsByController(region: number): boolean {
    return this.#value(region, 'on_locc1', -1) >= 0;
  }

  #on(key: number, velocity: number, seconds: number): string[] {
    this.#trigger++;
    this.#strikes.push({ key, velocity });
    const note = { key, velocity, number: this.#trigger, seconds, hasStarted: false };
    this.#down.set(key, note);
    const chosen = this.#numbers.filter((region) => {
      if (this.#startsByController(region) || !this.#answers(region, key, velocity)) return false;
      const trigger = this.#word(region, 'trigger', 'attack');
      const isAlone = this.#down.size === 1;
      if (trigger !== 'attack' && trigger !== (isAlone ? 'first' : 'legato')) return false;
      return this.#isMet(region) && this.#isTurn(region);
    });
    const told = this.#start(chosen, key, velocity, seconds);
    note.hasStarted = told.some((one) => one.startsWith('start'));
    return told;
  }

  #pedalHolds(region: number, note: Note): boolean {
    const isOn = this.#word(region, 'sustain_sw', 'on') === 'on';
    return (
      (isOn && this.#controllerValue(64) >= 64) || this.#caught.some(({ number }) => number === note.number)
    );
  }

  #off(key: number, seconds: number): string[] {
    const note = this.#down.get(key);
    if (!note) return [];
    this.#down.delete(key);
    const held = this.#numbers.filter((region) => this.#pedalHolds(region, note));
    this.#held.push(...held.map((region) => ({ note, caught: false, region })));
    const isHeld = (region: number) => this.#pedalHolds(region, note);
    return this.#letGo(note, seconds, (region) => !isHeld(region), true);
  }

  #letGo(note: Note, seconds: number, isMeant: (region: number) => boolean, isKey: boolean): string[] {
    const told: string[] = [];
    const isAlive = !note.hasStarted || this.#voices.some((voice) => voice.note === note.number);
    for (const voice of [...this.#voices]) {
      const isOf = voice.key === note.key && voice.note <= note.number && voice.endsWithNote;
      const own = { ...note, number: voice.note };
      if (!isOf || !isMeant(voice.region) || this.#pedalHolds(voice.region, own)) continue;
      if (voice.startSeconds > seconds) told.push(this.#stop(voice, 'fast'));
      else {
        voice.endsWithNote = false;
        told.push(`release ${voice.region}`);
      }
    }
    this.#trigger++;
    const chosen = this.#numbers.filter((region) => {
      if (!this.#answers(region, note.key, note.velocity)) return false;
      const trigger = this.#word(region, 'trigger', 'attack');
      const isOwn = trigger === 'release_key' ? isKey : trigger === 'release' && isMeant(region);
      if (!isOwn || !(isAlive || this.#word(region, 'rt_dead', 'off') === 'on')) return false;
      return this.#isMet(region) && this.#isTurn(region);
    });
    told.push(...this.#start(chosen, note.key, note.velocity, seconds, seconds - note.seconds));
    return told;
  }

  #controller(number: number, value: number, seconds: number): string[] {
    const before = this.#controllerValue(number);
    this.#controllers.set(number, value);
    const told: string[] = [];
    if (number === 66) {
      if (before < 64 && value >= 64) this.#caught = [...this.#down.values()];
      if (before >= 64 && value < 64) this.#caught = [];
    }
    if (number === 64 || number === 66) told.push(...this.#letHeldGo(seconds));
    if (number !== 1) return told;
    if (!this.#numbers.some((region) => this.#startsByController(region))) return told;
    this.#trigger++;
    const chosen = this.#numbers.filter((region) => {
      const low = this.#value(region, 'on_locc1', -1);
      const high = this.#value(region, 'on_hicc1', 127);
      if (low < 0 || !(value >= low && value <= high) || (before >= low && before <= high)) return false;
      return this.#isMet(region) && this.#isTurn(region);
    });
    return [...told, ...this.#start(chosen, -1, 127, seconds)];
  }

  /** Regions with one setting of the pedals let their notes go together, setting by setting in the order of the text. */
  #letHeldGo(seconds: number): string[] {
    const told: string[] = [];
    const settings = [...new Set(this.#numbers.map((region) => this.#word(region, 'sustain_sw', 'on')))];
    for (const setting of settings) {
      const isOf = (region: number) => this.#word(region, 'sustain_sw', 'on') === setting;
      const gone = this.#held.filter(({ region, note }) => isOf(region) && !this.#pedalHolds(region, note));
      this.#held = this.#held.filter((one) => !gone.includes(one));
      for (const note of new Set(gone.map((one) => one.note))) {
        told.push(...this.#letGo(note, seconds, isOf, false));
      }
    }
    return told;
  }

  #start(regions: number[], key: number, velocity: number, seconds: number, heldSeconds?: number): string[] {
    const isRelease = heldSeconds !== undefined;
    const told: string[] = [];
    for (const region of regions) {
      const group = this.#value(region, 'group', 0);
      const older = () => this.#voices.filter((voice) => voice.note !== this.#trigger);
      for (const voice of older()) {
        const offBy = this.#value(voice.region, 'off_by', 0);
        if (offBy !== 0 && offBy === group) told.push(this.#stop(voice));
      }
      if (this.#value(region, 'end', 0) < 0) continue;
      const ownKey = key < 0 ? this.#value(region, 'pitch_keycenter', 60) : key;
      const polyphony = this.#value(region, 'polyphony', 0);
      const inGroup = (voice: Voice) => this.#value(voice.region, 'group', 0) === group;
      const isCounted = (voice: Voice) =>
        group === 0 ? this.#boundFrom(voice.region) === this.#boundFrom(region) : inGroup(voice);
      while (polyphony > 0 && this.#voices.filter(isCounted).length >= polyphony) {
        const oldest = older().find(isCounted);
        if (!oldest) break;
        told.push(this.#stop(oldest));
      }
      const notePolyphony = this.#value(region, 'note_polyphony', 0);
      const ofNote = (voice: Voice) =>
        voice.key === ownKey &&
        inGroup(voice) &&
        !this.#word(voice.region, 'trigger', 'attack').startsWith('release');
      while (!isRelease && notePolyphony > 0 && this.#voices.filter(ofNote).length >= notePolyphony) {
        const softer = older().find(
          (voice) =>
            ofNote(voice) &&
            (voice.velocity <= velocity || this.#word(region, 'note_selfmask', 'on') === 'off'),
        );
        if (!softer) break;
        told.push(this.#stop(softer));
      }
      const isOpen = key >= 0 && !isRelease && this.#word(region, 'loop_mode', '') !== 'one_shot';
      const startSeconds = seconds + this.#value(region, 'delay', 0);
      this.#voices.push({
        region,
        key: ownKey,
        velocity,
        note: this.#trigger,
        startSeconds,
        endsWithNote: isOpen,
      });
      const isPrevious = this.#word(region, 'sw_vel', 'current') === 'previous';
      const own = (isPrevious ? this.#strikes.at(-2)?.velocity : undefined) ?? velocity;
      const gainDb = heldSeconds === undefined ? 0 : 0 - this.#value(region, 'rt_decay', 0) * heldSeconds;
      told.push(startText(region, ownKey, own, gainDb));
    }
    return told;
  }

  /** The header that sets the bound of voices of a region, where it has no group. */
  #boundFrom(region: number): number {
    const { names, regions } = this.#instrument;
    const parameters = this.#instrument.effectiveParameters(regions[region]);
    const bound = parameters.find(({ name }) => names.text(name) === 'polyphony');
    return this.#value(region, 'group', 0) === 0 && bound ? bound.header : -1;
  }

  #stop(voice: Voice, how?: string): string {
    this.#voices = this.#voices.filter((other) => other !== voice);
    const mode = this.#word(voice.region, 'off_mode', 'fast');
    const manner = mode === 'time' ? `${this.#value(voice.region, 'off_time', 0.006)} s` : mode;
    return `stop ${voice.region} ${how ?? manner}`;
  }
}
