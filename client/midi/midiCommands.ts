import type { Disposable } from 'vscode';
import { commands, env, l10n, window } from 'vscode';
import type { Message } from '../../server/playing/player/playMessage';
import { MidiBytes } from './midiBytes';
import type { MidiAccess, MidiInputs } from './midiInputs';

/** The commands that connect a MIDI keyboard and let it go. `access` is asked when somebody wants one, and not before. */
export function registerMidi(
  access: (() => MidiAccess) | undefined,
  play: (message: Message) => void,
): Disposable[] {
  const keyboard = new MidiKeyboard(play);
  return [
    keyboard,
    commands.registerCommand('zonewright.connectMidi', () => connect(access, keyboard)),
    commands.registerCommand('zonewright.disconnectMidi', () => keyboard.dispose()),
  ];
}

/** The keyboard that is connected, if any. */
class MidiKeyboard implements Disposable {
  readonly #play: (message: Message) => void;
  #close: (() => void) | undefined;

  constructor(play: (message: Message) => void) {
    this.#play = play;
  }

  connect(inputs: MidiInputs, number: number): void {
    this.dispose();
    const bytes = new MidiBytes();
    this.#close = inputs.open(number, (received) => {
      for (const message of bytes.take(received)) this.#play(message);
    });
  }

  dispose(): void {
    this.#close?.();
    this.#close = undefined;
  }
}

async function connect(access: (() => MidiAccess) | undefined, keyboard: MidiKeyboard): Promise<void> {
  const found = access?.();
  if (!found) {
    await window.showWarningMessage(
      l10n.t(
        'MIDI keyboards cannot be reached from an editor in a browser. Use the editor on the desktop, or the keys of the computer.',
      ),
    );
    return;
  }
  if (found.kind === 'missing') return offerPackage(found.install);
  if (found.kind === 'refused') {
    await window.showWarningMessage(found.reason);
    return;
  }
  const names = found.inputs.names();
  if (names.length === 0) {
    await window.showWarningMessage(
      env.remoteName === undefined
        ? l10n.t('No MIDI keyboard is connected to this computer.')
        : l10n.t(
            'No MIDI keyboard is connected to the computer that extensions run on, which is not this one.',
          ),
    );
    return;
  }
  const number = names.length === 1 ? 0 : await chosen(names);
  if (number === undefined) return;
  try {
    keyboard.connect(found.inputs, number);
  } catch (error) {
    const reason = error instanceof Error ? error.message : String(error);
    await window.showWarningMessage(l10n.t('{0} cannot be opened: {1}', names[number], reason));
    return;
  }
  await window.showInformationMessage(
    l10n.t('{0} plays what the keyboard map shows, once sound is turned on there.', names[number]),
  );
}

async function chosen(names: readonly string[]): Promise<number | undefined> {
  const items = names.map((label, number) => ({ label, number }));
  return (await window.showQuickPick(items, { title: l10n.t('MIDI keyboard') }))?.number;
}

/** Says what is missing, and puts what installs it into a terminal, to be looked at and started there. */
async function offerPackage(install: string): Promise<void> {
  const open = l10n.t('Open in a Terminal');
  const answer = await window.showInformationMessage(
    l10n.t('MIDI keyboards need a package that is not part of the extension: {0}', install),
    open,
  );
  if (answer !== open) return;
  const terminal = window.createTerminal(l10n.t('MIDI keyboards'));
  terminal.show();
  terminal.sendText(install, false);
}
