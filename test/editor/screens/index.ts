// The main screens in three kinds of themes and two sizes of windows, to be looked at:
// node test/editor/run.mjs --suite test/editor/screens/index.ts --minutes 20
// The pictures go to out/screenshots/screen-*.png.
import './screens';
import { runTests } from '../suite/host/runTests';
import { registeredTests } from '../suite/host/testList';

/** Called by the editor once its extension host is up. */
export async function run(): Promise<void> {
  await runTests(registeredTests());
}
