import type { Disposable } from 'vscode';
import { commands, l10n, window } from 'vscode';
import type { ServerClient } from '../serverClient';
import type { KnownInstrument } from './instrumentStates';
import { InstrumentStates } from './instrumentStates';
import { InstrumentTree } from './instrumentTree';

/** The tree *Instruments* of the explorer, with the commands that check what it lists and show it on the map. */
export function registerInstruments(client: ServerClient): Disposable[] {
  const states = new InstrumentStates(client);
  return [
    states,
    window.registerTreeDataProvider('zonewright.instruments', new InstrumentTree(states)),
    commands.registerCommand('zonewright.checkInstruments', async (one?: KnownInstrument) => {
      if (one) await states.check(one);
      else await checkAll(states);
    }),
    commands.registerCommand('zonewright.showInstrumentMap', async (one?: KnownInstrument) => {
      if (!one) return;
      await commands.executeCommand('vscode.open', one.uri);
      await commands.executeCommand('zonewright.showKeyboardMap');
    }),
  ];
}

async function checkAll(states: InstrumentStates): Promise<void> {
  await states.refresh();
  const all = states.all();
  await window.withProgress(
    {
      location: { viewId: 'zonewright.instruments' },
      title: l10n.t('Checking instruments'),
      cancellable: true,
    },
    async (_progress, token) => {
      for (const one of all) {
        if (token.isCancellationRequested) return;
        await states.check(one);
      }
    },
  );
}
