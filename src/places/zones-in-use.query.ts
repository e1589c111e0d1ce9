import type { DataSource } from 'typeorm';
import type { Tenancy } from '../platform/tenancy';
import { Venue } from './venue.entity';

/** The time zones of all venues of all associations, sorted. */
export async function readZonesInUse(service: {
  readonly dataSource: DataSource;
  readonly tenancy: Tenancy;
}): Promise<string[]> {
  const rows = await service.dataSource.query<{ id: string }[]>('select association_ids() as id');
  const zones = new Set<string>();
  for (const { id: associationId } of rows) {
    const venues = await service.tenancy.read(associationId, (tx) =>
      tx.find(Venue, { select: { timeZone: true }, where: { associationId } }),
    );
    for (const { timeZone } of venues) zones.add(timeZone);
  }
  return [...zones].sort();
}
