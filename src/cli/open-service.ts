import type { DataSource } from 'typeorm';
import { Association } from '../access/association.entity';
import { entities } from '../entities';
import { systemClock, type Clock } from '../platform/clock';
import { readConfiguration, type Configuration } from '../platform/configuration';
import { createDataSource, openDatabaseAccess } from '../platform/database';
import { Jobs } from '../platform/jobs';
import { createLog, type Log } from '../platform/log';
import { assertSchemaCurrent } from '../platform/migrate';
import { Tenancy } from '../platform/tenancy';
import { schemaPlan } from './schema-plan';

/** The service's ground, opened for a command. */
export interface OpenService {
  readonly configuration: Configuration;
  readonly dataSource: DataSource;
  readonly tenancy: Tenancy;
  readonly jobs: Jobs;
  readonly clock: Clock;
  readonly log: Log;
  /** Lets running jobs go, closes the connections and gives the built-in server up. */
  close(): Promise<void>;
}

/**
 * Opens the database that the environment names, or the built-in one, as the application role.
 *
 * @param options.onProgress told each step of starting the built-in server
 * @throws {ConfigurationError} when the environment cannot be used
 * @throws {SchemaMismatchError} when the database is older or newer than this code; `crewloom migrate` helps
 */
export async function openService(
  options: { readonly onProgress?: (step: string) => void; readonly applicationName?: string } = {},
): Promise<OpenService> {
  const configuration = readConfiguration(process.env);
  const log = createLog({ level: configuration.logLevel });
  const access = await openDatabaseAccess(configuration, options.onProgress);
  const dataSource = createDataSource({
    url: access.appUrl,
    entities,
    applicationName: options.applicationName ?? 'crewloom command',
  });
  try {
    await dataSource.initialize();
    await assertSchemaCurrent(dataSource, schemaPlan);
    const jobs = await Jobs.start(dataSource, log);
    return {
      configuration,
      dataSource,
      tenancy: new Tenancy(dataSource),
      jobs,
      clock: systemClock,
      log,
      close: async () => {
        await jobs.stop({ timeoutMs: 10_000 });
        await dataSource.destroy();
        await access.release();
      },
    };
  } catch (error) {
    if (dataSource.isInitialized) await dataSource.destroy();
    await access.release();
    throw error;
  }
}

/** The associations of this database, by short name. */
export async function readAssociations(
  service: Pick<OpenService, 'dataSource' | 'tenancy'>,
): Promise<Association[]> {
  const rows = await service.dataSource.query<{ id: string }[]>('select association_ids() as id');
  const associations: Association[] = [];
  for (const { id } of rows) {
    associations.push(await service.tenancy.read(id, (tx) => tx.findOneByOrFail(Association, { id })));
  }
  return associations.sort((left, right) => (left.slug < right.slug ? -1 : 1));
}

/** What somebody typed names nothing, or too much; the message says what there is. */
export class UnknownNameError extends Error {
  constructor(message: string) {
    super(message);
    this.name = 'UnknownNameError';
  }
}

/**
 * The association with this short name; without one, the only association there is.
 *
 * @throws {UnknownNameError}
 */
export async function chooseAssociation(
  service: Pick<OpenService, 'dataSource' | 'tenancy'>,
  slug: string | undefined,
): Promise<Association> {
  const associations = await readAssociations(service);
  const slugs = associations.map((association) => association.slug).join(', ');
  if (associations.length === 0) {
    throw new UnknownNameError('There is no association yet; "crewloom demo" loads one to try.');
  }
  if (slug === undefined && associations.length > 1) {
    throw new UnknownNameError(`There are several associations; name one by --association: ${slugs}.`);
  }
  const chosen = slug === undefined ? associations[0] : associations.find((one) => one.slug === slug);
  if (chosen === undefined)
    throw new UnknownNameError(`There is no association "${slug}"; there is ${slugs}.`);
  return chosen;
}
