/** Address of a server that is there for the whole run, when there is one. */
export const serverUrlVariable = 'CREWLOOM_TEST_SERVER_URL';
/** Folder for the built-in server of this run, otherwise. */
export const testFolderVariable = 'CREWLOOM_TEST_FOLDER';
/** Name of the migrated database that each test file's own is copied from. */
export const templateVariable = 'CREWLOOM_TEST_TEMPLATE';

/** What the end of the run must undo; lives in the process that runs the global set-up and tear-down. */
export const testRun: { cleanUps: (() => Promise<void>)[] } = shared();

function shared(): { cleanUps: (() => Promise<void>)[] } {
  // Set-up and tear-down may be loaded as separate copies of this module.
  const key = Symbol.for('crewloom.testRun');
  const holder = globalThis as { [key: symbol]: unknown };
  holder[key] ??= { cleanUps: [] };
  return holder[key] as { cleanUps: (() => Promise<void>)[] };
}
