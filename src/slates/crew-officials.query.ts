import { In, type EntityManager } from 'typeorm';
import { LevelStep } from '../access/level-step.entity';
import { Official } from '../roster/official.entity';

/** An official as named beside a seat; nothing private. */
export interface CrewOfficial {
  readonly id: string;
  readonly number: string;
  readonly givenName: string;
  readonly familyName: string;
  /** Given name, then family name. */
  readonly name: string;
  readonly level: number;
  readonly levelName: string;
  readonly active: boolean;
}

/** The officials with these ids, by id; ids that the association does not have are left out. */
export async function readCrewOfficials(
  tx: EntityManager,
  associationId: string,
  officialIds: readonly string[],
): Promise<Map<string, CrewOfficial>> {
  if (officialIds.length === 0) return new Map();
  const officials = await tx.findBy(Official, { associationId, id: In([...new Set(officialIds)]) });
  const steps = await tx.findBy(LevelStep, { associationId });
  const levelNames = new Map(steps.map((step) => [step.level, step.name]));
  return new Map(
    officials.map((official) => [
      official.id,
      {
        id: official.id,
        number: official.number,
        givenName: official.givenName,
        familyName: official.familyName,
        name: `${official.givenName} ${official.familyName}`,
        level: official.level,
        levelName: levelNames.get(official.level) ?? `level ${official.level}`,
        active: official.active,
      },
    ]),
  );
}
