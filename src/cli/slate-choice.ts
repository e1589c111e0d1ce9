import type { Association } from '../access/association.entity';
import type { Clock } from '../platform/clock';
import { localParts } from '../platform/local-time';
import type { Tenancy } from '../platform/tenancy';
import { readSlateSummaries, type SlateSummary } from '../slates/slate-summary.query';
import { UnknownNameError } from './open-service';

/**
 * The slate of this name or id. Without one: the next that is still to come and was not published, else the next
 * to come.
 *
 * @throws {UnknownNameError} listing the slates there are
 */
export async function chooseSlate(
  service: { readonly tenancy: Tenancy; readonly clock: Clock },
  association: Pick<Association, 'id' | 'timeZone'>,
  asked: string | undefined,
): Promise<SlateSummary> {
  const summaries = await service.tenancy.read(association.id, (tx) =>
    readSlateSummaries(tx, association.id),
  );
  const inOrder = [...summaries].reverse();
  if (asked !== undefined) {
    const wanted = asked.toLowerCase();
    const named = inOrder.find(({ id, name }) => id === wanted || name.toLowerCase() === wanted);
    if (named !== undefined) return named;
    const names = inOrder.map(({ name }) => `"${name}"`).join(', ');
    throw new UnknownNameError(`There is no slate "${asked}"; there is ${names === '' ? 'none' : names}.`);
  }
  const today = localParts(service.clock.now(), association.timeZone).date;
  const coming = inOrder.filter(({ toDate }) => toDate >= today);
  const next = coming.find(({ published }) => published === null) ?? coming[0];
  if (next === undefined) {
    throw new UnknownNameError('No slate is to come; open one with "crewloom slate open NAME FROM TO".');
  }
  return next;
}
