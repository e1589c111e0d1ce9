import { Client, escapeIdentifier } from 'pg';
import { serverUrlVariable, templateVariable, testRun } from './test-run';

/** Runs once after all test files. */
export default async function tearDown(): Promise<void> {
  const server = process.env[serverUrlVariable];
  const template = process.env[templateVariable];
  if (server !== undefined && template !== undefined) {
    const client = new Client({ connectionString: server });
    await client.connect();
    await client.query(`drop database if exists ${escapeIdentifier(template)}`);
    await client.end();
  }
  for (const cleanUp of testRun.cleanUps.splice(0)) await cleanUp();
}
