// The tasks of `npm run tasks`, run in the extension host as the tests are.
import './activationTime';
import './tableTasks';
import './mendingTasks';
import './textTasks';
import { runTests } from '../suite/host/runTests';
import { registeredTests } from '../suite/host/testList';

/** Called by the editor once its extension host is up. */
export async function run(): Promise<void> {
  await runTests(registeredTests());
}
