import { until } from '../suite/host/until';
import type { Target, Workbench } from '../suite/host/workbench';

/**
 * What a practised person needs for a key and for pointing at something (S. K. Card, T. P. Moran, A. Newell: The Keystroke-Level Model for
 * User Performance Time with Interactive Systems, Communications of the ACM 23 (1980), 7, figure 1). Thinking is left out.
 */
const keySeconds = 0.2;
const pointSeconds = 1.1;

/** Keys pressed, chords as one, and clicks. */
export interface Actions {
  keys: number;
  clicks: number;
}

/** The seconds that actions take without any waiting. */
export function secondsOf({ keys, clicks }: Actions): number {
  return keys * keySeconds + clicks * pointSeconds;
}

const pause = (seconds: number) => new Promise((resolve) => setTimeout(resolve, seconds * 1000));

/** Works in the editor as quickly as a practised person, and counts what is done. */
export class Person {
  readonly actions: Actions = { keys: 0, clicks: 0 };
  readonly #workbench: Workbench;

  constructor(workbench: Workbench) {
    this.#workbench = workbench;
  }

  /** Presses keys or chords one after another. */
  async press(...keys: string[]): Promise<void> {
    for (const key of keys) {
      await pause(keySeconds);
      await this.#workbench.press(key);
      this.actions.keys++;
    }
  }

  /** Types a text. */
  async type(text: string): Promise<void> {
    await this.#workbench.typeAsPerson(text, keySeconds * 1000);
    this.actions.keys += text.length;
  }

  /** Pastes what was copied. */
  async paste(): Promise<void> {
    await pause(keySeconds);
    await this.#workbench.paste();
    this.actions.keys++;
  }

  /** Clicks something once it can be seen. */
  async click(target: Target, button: 'left' | 'right' = 'left'): Promise<void> {
    // What is drawn anew just then has to be looked for again.
    await until('something to point at', async () => {
      await this.#workbench.move(target);
      return true;
    });
    await pause(pointSeconds);
    await this.#workbench.click(target, { button });
    this.actions.clicks++;
  }

  /** Chooses in a list that drops down: two clicks, which the editor without a screen cannot make. */
  async choose(view: string, id: string, value: string): Promise<void> {
    await this.#workbench.waitFor({ view, selector: `#${id}` });
    await pause(2 * pointSeconds);
    await this.#workbench.evaluate(
      `(() => { const list = document.getElementById(${JSON.stringify(id)}); list.value = ${JSON.stringify(value)}; list.dispatchEvent(new Event('change', { bubbles: true })); })()`,
      view,
    );
    this.actions.clicks += 2;
  }

  /** Has a command carried out, by the beginning of its title. */
  async command(words: string, title: string): Promise<void> {
    await this.press('F1');
    await this.#workbench.waitFor({ selector: '.quick-input-widget input' });
    await this.type(words);
    await this.#workbench.waitFor({
      selector: `.quick-input-list .monaco-list-row.focused >> text=${title}`,
    });
    await this.press('Enter');
  }
}
