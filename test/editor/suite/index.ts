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
import './host/pictures';
import './samples';
import './sound';
import './soundFont';
import './host/screen';
import './tablePreview';
import './recordings';
import './templatesAndPacks';
import './vocabularies';
import './host/walkthroughPictures';
import { runTests } from './host/runTests';
import { registeredTests } from './host/testList';

/** Called by the editor once its extension host is up. */
export async function run(): Promise<void> {
  await runTests(registeredTests());
}
