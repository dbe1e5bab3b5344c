import { afterAll } from 'vitest';
import { removeTemporaryFolders } from './temporaryFolder';

// Here and not in the module of the folders: where test files share their modules, that one runs with the first of them alone, while
// this one runs with each. Of what is to be done after all tests, what is said first comes last.
afterAll(removeTemporaryFolders);
