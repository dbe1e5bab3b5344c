import type { TemplateResult } from 'lit';
import { html, LitElement, nothing } from 'lit';
import { keyText } from '../../../server/model/wording/rangeWords';
import type { Message } from '../../../server/playing/player/playMessage';
import type { Packed } from '../../../server/protocol/conversion/packedData';
import { unpacked } from '../../../server/protocol/conversion/packedData';
import type { AudibleInstrument } from '../../../server/protocol/requests/soundRequests';
import { button } from '../../webview/page/controls/button';
import { l10n } from '../../webview/page/l10n';
import type { AuditionFromPage, AuditionToPage } from '../messages';
import type { FromVoice } from '../voiceMessages';
import { floatsOf } from './floats';
import type { LookedAtNote } from './readout';
import { readoutText } from './readout';
import { turnsOf } from './turns';
import { TypedKeys } from './typedKeys';
import { VoiceLink } from './voiceLink';

/** The first level, in dB; a level that was set is never remembered beyond the page. */
const firstDb = -12;
const lowestDb = -60;
/** Regions whose levels lie further apart than this in dB are told of before they are heard (our choice). */
const tellJumpDb = 12;
/** Seconds that a region sounds when several are played in turn. */
const turnSeconds = 1.2;
/** Milliseconds that a note of a single region is held. */
const holdMs = 900;

/** How fast keys are let go that do not say it (MIDI 1.0: 64). */
const releaseVelocity = 64;
/** The key that plays a sample alone. */
const sampleKey = 60;

type Waiting = Pick<Extract<AuditionToPage, { type: 'play' }>, 'headers' | 'what'>;

/** The strip that turns sound on and off, sets its level, plays by typing, and says what sounds. */
export class AuditionStrip extends LitElement {
  /** Tells the host something. */
  tell: (message: AuditionFromPage) => void = () => {};
  /** Told of regions that sound, by their headers, and of the keys that play them. */
  showSounding: (headers: readonly number[], keys: readonly number[]) => void = () => {};
  #link: VoiceLink | undefined;
  #isStarting = false;
  #instrument: AudibleInstrument | undefined;
  #db = firstDb;
  #status = '';
  #looked: LookedAtNote | undefined;
  readonly #typed = new TypedKeys();
  /** What changes with the files of samples, as they were last. */
  readonly #states = new Map<string, string>();
  #turns: ReturnType<typeof setTimeout>[] = [];
  /** What is to be played once the instrument is there. */
  #waiting: Waiting | undefined;

  /** Whether notes are heard. */
  get isOn(): boolean {
    return this.#link !== undefined;
  }

  protected override createRenderRoot(): this {
    return this;
  }

  override connectedCallback(): void {
    super.connectedCallback();
    window.addEventListener('blur', this.#silence);
    document.addEventListener('visibilitychange', this.#silence);
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    window.removeEventListener('blur', this.#silence);
    document.removeEventListener('visibilitychange', this.#silence);
    void this.#turnOff();
  }

  /** Takes a message of the host; answers whether it was one about sound. */
  receive(message: AuditionToPage | { type: string }): message is AuditionToPage {
    const known = message as AuditionToPage;
    switch (known.type) {
      case 'sound':
        this.#takeInstrument(known);
        return true;
      case 'audio': {
        const { sample, startFrame, rate, totalFrames } = known;
        const channels = known.channels.map(floatsOf);
        this.#link?.send({ type: 'audio', sample, startFrame, rate, totalFrames, channels });
        return true;
      }
      case 'sampleSound':
        this.#playSample(known.instrument);
        return true;
      case 'play':
        void this.#playInTurn(known);
        return true;
      case 'midi':
        this.#takeMidi(known.message);
        return true;
      case 'silence':
        this.#silence();
        return true;
      default:
        return false;
    }
  }

  /** Starts a note, where sound is on. */
  press(key: number, velocity: number): void {
    this.#play({ kind: 'noteOn', key, velocity });
    this.look(key, velocity);
  }

  release(key: number): void {
    this.#play({ kind: 'noteOff', key, velocity: releaseVelocity });
  }

  /** Shows what a key and velocity would play, and why other regions stay silent. */
  look(key: number, velocity: number): void {
    this.#link?.send({ type: 'look', key, velocity });
  }

  protected override render(): TemplateResult {
    const isOn = this.isOn;
    return html`<section class="audition" aria-label=${l10n.t('Sound')}>
      <div class="audition-row">
        ${button({
          id: 'sound-switch',
          label: isOn ? l10n.t('Turn sound off') : l10n.t('Turn sound on'),
          isSecondary: isOn,
          isDisabled: this.#isStarting,
          press: () => void (isOn ? this.#turnOff() : this.#turnOn()),
        })}
        ${isOn ? this.#controls() : html`<span class="quiet">${l10n.t('Start quiet, above all with headphones.')}</span>`}
      </div>
      ${isOn ? this.#surface() : nothing} ${isOn ? this.#controllers() : nothing}
      <p class="audition-status" role="status">${this.#status}</p>
      ${isOn ? html`<p class="audition-readout quiet">${readoutText(this.#looked)}</p>` : nothing}
    </section>`;
  }

  #controls(): TemplateResult {
    return html`${button({
      id: 'stop-sound',
      label: l10n.t('Stop all'),
      isSecondary: true,
      press: () => this.#silence(),
    })}
      <label class="audition-level"
        >${l10n.t('Level')}
        <input
          type="range"
          min=${lowestDb}
          max="0"
          step="1"
          .value=${String(this.#db)}
          aria-valuetext=${l10n.t('{0} dB', this.#db)}
          @input=${(event: Event) => this.#setLevel(Number((event.target as HTMLInputElement).value))}
        />
        <output>${l10n.t('{0} dB', this.#db)}</output></label
      >`;
  }

  #surface(): TemplateResult {
    const { start, velocity } = this.#typed;
    return html`<div
      class="audition-surface"
      tabindex="0"
      role="application"
      aria-label=${l10n.t('Play by typing')}
      aria-description=${l10n.t(
        'Two rows of letters are piano keys. Page Up and Page Down move by an octave, the arrow keys change the velocity, Escape stops all sound.',
      )}
      @keydown=${this.#keyDown}
      @keyup=${this.#keyUp}
      @blur=${() => this.#releaseTyped()}
    >
      ${l10n.t('Type here to play from {0} at velocity {1}', keyText(start), velocity)}
      <span class="quiet">${l10n.t('Page Up/Down: octave · arrows: velocity · Escape: stop')}</span>
    </div>`;
  }

  #controllers(): TemplateResult | typeof nothing {
    const controllers = this.#instrument?.controllers ?? [];
    if (controllers.length === 0) return nothing;
    return html`<details class="audition-controllers" open>
      <summary>${l10n.t('Controllers')}</summary>
      <div>
        ${controllers.map(
          (one) => html`<label
            >${one.label === '' ? l10n.t('Controller {0}', one.number) : `${one.label} (${one.number})`}
            <input
              type="range"
              min="0"
              max="127"
              .value=${String(one.value)}
              @input=${(event: Event) => this.#move(one.number, Number((event.target as HTMLInputElement).value))}
          /></label>`,
        )}
      </div>
    </details>`;
  }

  async #turnOn(): Promise<void> {
    if (this.#link || this.#isStarting) return;
    this.#isStarting = true;
    this.requestUpdate();
    try {
      this.#link = await VoiceLink.start((message) => this.#hear(message));
      this.#setLevel(firstDb);
      this.#status = l10n.t(
        'Start quiet, above all with headphones. The output is limited, and begins at −12 dB.',
      );
      this.tell({ type: 'wantSound' });
    } catch (error) {
      this.#status = l10n.t('Sound cannot be started here: {0}', String(error));
    }
    this.#isStarting = false;
    this.requestUpdate();
  }

  async #turnOff(): Promise<void> {
    const link = this.#link;
    if (!link) return;
    this.#silence();
    this.#link = undefined;
    this.#states.clear();
    this.#instrument = undefined;
    this.#looked = undefined;
    this.#status = '';
    this.tell({ type: 'soundOff' });
    this.showSounding([], []);
    this.requestUpdate();
    await link.close();
  }

  #takeInstrument({ instrument, reason }: Extract<AuditionToPage, { type: 'sound' }>): void {
    if (!this.#link) return;
    if (instrument === null) {
      this.#status = reason ?? l10n.t('This document holds no instrument.');
      this.requestUpdate();
      return;
    }
    const before = new Map(this.#instrument?.controllers.map(({ number, value }) => [number, value]));
    const audible = unpacked(instrument) as AudibleInstrument;
    audible.controllers = audible.controllers.map((one) => ({
      ...one,
      value: before.get(one.number) ?? one.value,
    }));
    const isFirst = this.#instrument === undefined;
    this.#instrument = audible;
    const { playable, program } = audible;
    for (const [at, sample] of program.samples.entries()) {
      const state = audible.sampleStates[at] ?? '';
      if ((this.#states.get(sample) ?? state) !== state) this.#link.send({ type: 'forget', sample });
      this.#states.set(sample, state);
    }
    this.#link.send({ type: 'instrument', playable, program });
    if (isFirst) this.#tellJumps(program.volumeDb);
    const waiting = this.#waiting;
    this.#waiting = undefined;
    if (waiting) void this.#playInTurn(waiting);
    this.requestUpdate();
  }

  /** Says before anything is heard that some regions are far louder than others. */
  #tellJumps(volumeDb: Float64Array): void {
    let low = Number.POSITIVE_INFINITY;
    let high = Number.NEGATIVE_INFINITY;
    for (const db of volumeDb) {
      low = Math.min(low, db);
      high = Math.max(high, db);
    }
    if (high - low <= tellJumpDb) return;
    const decibels = Math.round(high - low);
    this.#status = l10n.t(
      'Careful: regions differ in level by up to {0} dB. Keep the level low at first.',
      decibels,
    );
  }

  #hear(message: FromVoice): void {
    switch (message.type) {
      case 'sounding': {
        const header = this.#instrument?.playable.header;
        const headers = header ? message.regions.map((region) => header[region]) : [];
        this.showSounding(headers, message.keys);
        this.tell({ type: 'sounding', headers });
        return;
      }
      case 'want':
        this.tell({
          type: 'wantAudio',
          sample: message.sample,
          startFrame: message.startFrame,
          frames: message.frames,
        });
        return;
      case 'looked':
        this.#looked = message;
        break;
      case 'trouble':
        this.#status = l10n.t(message.message);
    }
    this.requestUpdate();
  }

  #setLevel(db: number): void {
    this.#db = db;
    this.#link?.send({ type: 'level', db: db <= lowestDb ? Number.NEGATIVE_INFINITY : db });
    this.requestUpdate();
  }

  #play(message: Message): void {
    this.#link?.send({ type: 'message', message });
  }

  /** Plays what a MIDI keyboard sends; the controllers shown follow it. */
  #takeMidi(message: Message): void {
    if (message.kind === 'noteOn') this.press(message.key, message.velocity);
    else if (message.kind === 'controller') {
      this.#move(message.number, message.value);
      this.requestUpdate();
    } else this.#play(message);
  }

  #move(number: number, value: number): void {
    const controller = this.#instrument?.controllers.find((one) => one.number === number);
    if (controller) controller.value = value;
    this.#play({ kind: 'controller', number, value });
  }

  #keyDown(event: KeyboardEvent): void {
    if (event.ctrlKey || event.metaKey || event.altKey) return;
    event.stopPropagation();
    if (event.code === 'Tab') return;
    if (event.code === 'Escape') this.#silence();
    else if (this.#typed.adjust(event.code)) this.requestUpdate();
    else {
      const key = this.#typed.press(event.code);
      if (key === undefined) return;
      this.press(key, this.#typed.velocity);
    }
    event.preventDefault();
  }

  #keyUp(event: KeyboardEvent): void {
    const key = this.#typed.release(event.code);
    if (key !== undefined) this.release(key);
  }

  #releaseTyped(): void {
    for (const key of this.#typed.releaseAll()) this.release(key);
  }

  readonly #silence = (): void => {
    for (const turn of this.#turns) clearTimeout(turn);
    this.#turns = [];
    this.#releaseTyped();
    this.#link?.send({ type: 'stop' });
  };

  /** Plays a sample by itself; what is played afterwards is the instrument again. */
  #playSample(packedSample: Packed): void {
    const instrument = this.#instrument;
    if (!this.#link || !instrument) return;
    const { playable, program } = unpacked(packedSample) as AudibleInstrument;
    this.#link.send({ type: 'instrument', playable, program });
    this.#play({ kind: 'noteOn', key: sampleKey, velocity: 127 });
    this.#link.send({ type: 'instrument', playable: instrument.playable, program: instrument.program });
  }

  async #playInTurn(waiting: Waiting): Promise<void> {
    await this.#turnOn();
    if (!this.#instrument) {
      this.#waiting = waiting;
      return;
    }
    this.#silence();
    if (waiting.what === 'sample') {
      const [header] = waiting.headers;
      if (header !== undefined) this.tell({ type: 'wantSample', header });
      return;
    }
    const turns = turnsOf(this.#instrument.playable, waiting.headers, waiting.what);
    for (const [turn, { key, velocity }] of turns.entries()) {
      const at = 1000 * turnSeconds * turn;
      this.#turns.push(
        setTimeout(() => this.press(key, velocity), at),
        setTimeout(() => this.release(key), at + holdMs),
      );
    }
  }
}

customElements.define('audition-strip', AuditionStrip);
