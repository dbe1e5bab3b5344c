// What the extension host runs: every file with tests is imported here. `testList.ts` says how to write one.
import './activation';
import './comparison';
import './conversion';
import './findings';
import './instruments';
import './keyboardMap';
import './mapChanges';
import './mapPlaces';
import './killedServer';
import './language';
import './library';
import './pasteTable';
import './pictures';
import './samples';
import './sound';
import './soundFont';
import './screen';
import './tablePreview';
import './recordings';
import './templatesAndPacks';
import './vocabularies';
import './walkthroughPictures';
import { runTests } from './runTests';
import { registeredTests } from './testList';

/** Called by the editor once its extension host is up. */
export async function run(): Promise<void> {
  await runTests(registeredTests());
}
