/**
 * The screen, as the tests see it: a client of the runner's control server, which drives the browser that shows the
 * workbench. A test gets a `Workbench` from `workbenchTest` (see `testList.ts`).
 *
 * - `selector` is a CSS selector, or any other selector that Playwright takes (`text=Save`, `role=button[name="Play"]`).
 * - `view` says that the element is inside a web view: it is a CSS selector that only that web view's page matches,
 *   such as `#keyboard-map`. Without it the element is one of the workbench's own.
 * - Every call waits, up to `timeoutSeconds` (15 where nothing is said), until the view and the element are there.
 * - Keys are named as Playwright names them: `Enter`, `F1`, `Control+Shift+P`, `a`. They go to what has the focus.
 * - Positions are in CSS pixels from the element's top left corner.
 *
 *     await workbench.click({ view: '#keyboard-map', selector: 'button.zoom-in' });
 *     const label = await workbench.text({ view: '#keyboard-map', selector: '[role=status]' });
 *     await workbench.useColourTheme('light');
 *     await workbench.screenshot('keyboard-map-light');
 */
import * as vscode from 'vscode';
import { until } from './until';

/** An element of the workbench or, with `view`, of a web view. */
export interface Target {
  readonly selector: string;
  readonly view?: string;
  readonly timeoutSeconds?: number;
}

/** A point in CSS pixels from the top left corner of an element. */
export interface Position {
  readonly x: number;
  readonly y: number;
}

/** A key held down while the mouse acts. */
export type HeldKey = 'Alt' | 'Control' | 'Meta' | 'Shift';

/** How to click: where (the middle where nothing is said), with what, how often. */
export interface ClickOptions {
  readonly position?: Position;
  readonly button?: 'left' | 'middle' | 'right';
  readonly modifiers?: readonly HeldKey[];
  readonly count?: number;
}

/**
 * An error that a page wrote to its console or threw; `source` is an address, empty where it is unknown, `inView` says
 * that it belongs to a web view. The workbench of the browser run has a few of its own, which mean nothing.
 */
export interface PageProblem {
  readonly text: string;
  readonly inView: boolean;
  readonly source: string;
}

/** One theme of each kind that the editor knows. */
export type ColourTheme = 'light' | 'dark' | 'highContrast' | 'highContrastLight';

interface Requests {
  screenshot: { fields: { name: string } & Partial<Target>; value: string };
  resize: { fields: { width: number; height: number }; value: null };
  press: { fields: { keys: readonly string[] }; value: null };
  paste: { fields: object; value: null };
  type: { fields: { text: string; delay?: number }; value: null };
  click: { fields: Target & ClickOptions; value: null };
  move: { fields: Target & { position?: Position }; value: null };
  drag: { fields: Target & { from: Position; to: Position; modifiers?: readonly HeldKey[] }; value: null };
  wheel: {
    fields: Target & {
      position?: Position;
      deltaX?: number;
      deltaY?: number;
      modifiers?: readonly HeldKey[];
    };
    value: null;
  };
  waitFor: { fields: Target & { state?: 'visible' | 'hidden' | 'attached' | 'detached' }; value: null };
  text: { fields: Target; value: string };
  count: { fields: Target; value: number };
  evaluate: { fields: { expression: string; view?: string; timeoutSeconds?: number }; value: unknown };
  problems: { fields: object; value: readonly PageProblem[] };
}

/** As `host/workbenchPage.mjs` opens it. */
const usualWindow = { width: 1440, height: 900 };

const themes: Record<ColourTheme, { name: string; kind: vscode.ColorThemeKind; cssClass: string }> = {
  light: { name: 'Default Light Modern', kind: vscode.ColorThemeKind.Light, cssClass: 'vs' },
  dark: { name: 'Default Dark Modern', kind: vscode.ColorThemeKind.Dark, cssClass: 'vs-dark' },
  highContrast: {
    name: 'Default High Contrast',
    kind: vscode.ColorThemeKind.HighContrast,
    cssClass: 'hc-black',
  },
  highContrastLight: {
    name: 'Default High Contrast Light',
    kind: vscode.ColorThemeKind.HighContrastLight,
    cssClass: 'hc-light',
  },
};

/** Drives the browser that shows the workbench. Every method throws when what it needs is not there in time. */
export class Workbench {
  readonly #address: string;

  constructor(address: string) {
    this.#address = address;
  }

  /** Saves `out/screenshots/<name>.png`, of the whole workbench or of one element; gives the file's path. */
  screenshot(name: string, target: Partial<Target> = {}): Promise<string> {
    return this.#ask('screenshot', { name, ...target });
  }

  /** Makes the window another size, in CSS pixels, while something is done, and then the usual one again. */
  async inWindowOf(width: number, height: number, action: () => Promise<void>): Promise<void> {
    await this.#ask('resize', { width, height });
    try {
      await action();
    } finally {
      await this.#ask('resize', usualWindow);
    }
  }

  /** Waits until what is under way on the screen has been drawn: two frames, and half a second for what comes in pieces. */
  async settled(): Promise<void> {
    await this.evaluate(
      'new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(() => setTimeout(done, 500))))',
    );
  }

  /** Pastes the clipboard as the keys for it do. */
  async paste(): Promise<void> {
    await this.#ask('paste', {});
  }

  /** Presses keys or chords one after another. */
  async press(...keys: string[]): Promise<void> {
    await this.#ask('press', { keys });
  }

  /** Types a text into what has the focus. */
  async type(text: string): Promise<void> {
    await this.#ask('type', { text });
  }

  /** Types as a practised person does, about seven keys a second where nothing is said, where what comes between keys matters. */
  async typeAsPerson(text: string, millisecondsPerKey = 140): Promise<void> {
    await this.#ask('type', { text, delay: millisecondsPerKey });
  }

  /** Clicks an element when it is visible and still. */
  async click(target: Target, options: ClickOptions = {}): Promise<void> {
    await this.#ask('click', { ...target, ...options });
  }

  /** Moves the mouse over an element, to its middle where no position is given. */
  async move(target: Target, position?: Position): Promise<void> {
    await this.#ask('move', { ...target, position });
  }

  /** Drags from one point of an element to another, with keys held down where they are given. */
  async drag(
    target: Target,
    from: Position,
    to: Position,
    modifiers: readonly HeldKey[] = [],
  ): Promise<void> {
    await this.#ask('drag', { ...target, from, to, modifiers });
  }

  /** Turns the mouse wheel over an element; the deltas are in CSS pixels. */
  async wheel(
    target: Target,
    options: { position?: Position; deltaX?: number; deltaY?: number; modifiers?: readonly HeldKey[] },
  ): Promise<void> {
    await this.#ask('wheel', { ...target, ...options });
  }

  /** Waits until an element is visible, or in another state. */
  async waitFor(target: Target, state: Requests['waitFor']['fields']['state'] = 'visible'): Promise<void> {
    await this.#ask('waitFor', { ...target, state });
  }

  /** The text that an element shows. */
  text(target: Target): Promise<string> {
    return this.#ask('text', target);
  }

  /** How many elements match now. */
  count(target: Target): Promise<number> {
    return this.#ask('count', target);
  }

  /**
   * What a JavaScript expression gives in the workbench's page or, with `view`, in a web view's; it must fit into JSON.
   * A promise is awaited. The caller says what type comes back.
   */
  evaluate<T>(expression: string, view?: string): Promise<T> {
    return this.#ask('evaluate', { expression, view }) as Promise<T>;
  }

  /** The errors that pages wrote to their consoles or threw since the run began. */
  problems(): Promise<readonly PageProblem[]> {
    return this.#ask('problems', {});
  }

  /** Changes the colour theme and waits until the extension host and the screen have it. */
  async useColourTheme(choice: ColourTheme): Promise<void> {
    const theme = themes[choice];
    await vscode.workspace
      .getConfiguration('workbench')
      .update('colorTheme', theme.name, vscode.ConfigurationTarget.Global);
    await until(`the theme “${theme.name}”`, () => vscode.window.activeColorTheme.kind === theme.kind);
    await this.waitFor({ selector: `.monaco-workbench.${theme.cssClass}` });
  }

  async #ask<Name extends keyof Requests>(
    name: Name,
    fields: Requests[Name]['fields'],
  ): Promise<Requests[Name]['value']> {
    const response = await fetch(`${this.#address}/${name}`, {
      method: 'POST',
      body: JSON.stringify(fields),
    });
    const answer = (await response.json()) as { value: Requests[Name]['value'] } | { error: string };
    if ('error' in answer) throw new Error(`${name}: ${answer.error}`);
    return answer.value;
  }
}
