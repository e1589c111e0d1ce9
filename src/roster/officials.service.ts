import { Injectable } from '@nestjs/common';
import { In, type EntityManager } from 'typeorm';
import { LevelStep } from '../access/level-step.entity';
import { Place } from '../places/place.entity';
import type { Position } from '../places/travel-estimate';
import { AvailabilityRule } from './availability-rule.entity';
import { Official } from './official.entity';

/** An official with what belongs to them. */
export interface OfficialView {
  readonly official: Official;
  /** Name of their step on the ladder. */
  readonly levelName: string;
  /** Where they set out; null while nobody has entered it. */
  readonly home: Position | null;
}

/** Reads officials and when they are free. */
@Injectable()
export class OfficialsService {
  /** Every official by family name; those no longer active only on request. */
  async list(
    tx: EntityManager,
    associationId: string,
    options: { readonly withInactive?: boolean } = {},
  ): Promise<OfficialView[]> {
    const active = options.withInactive === true ? {} : { active: true };
    const officials = await tx.find(Official, {
      where: { associationId, ...active },
      order: { familyName: 'asc', givenName: 'asc', id: 'asc' },
    });
    return this.viewsOf(tx, associationId, officials);
  }

  async get(tx: EntityManager, associationId: string, id: string): Promise<OfficialView | null> {
    return this.oneOf(tx, associationId, await tx.findOneBy(Official, { associationId, id }));
  }

  /** By the association's own number. */
  async findByNumber(tx: EntityManager, associationId: string, number: string): Promise<OfficialView | null> {
    return this.oneOf(tx, associationId, await tx.findOneBy(Official, { associationId, number }));
  }

  /** The rules of these officials, by official id; who has none has an empty list. */
  async availabilityRules(
    tx: EntityManager,
    associationId: string,
    officialIds: readonly string[],
  ): Promise<Map<string, AvailabilityRule[]>> {
    const rules = await tx.find(AvailabilityRule, {
      where: { associationId, officialId: In([...officialIds]) },
      order: { localDate: 'asc', localTime: 'asc', id: 'asc' },
    });
    const byOfficialId = new Map<string, AvailabilityRule[]>(officialIds.map((id) => [id, []]));
    for (const rule of rules) byOfficialId.get(rule.officialId)?.push(rule);
    return byOfficialId;
  }

  private async oneOf(
    tx: EntityManager,
    associationId: string,
    official: Official | null,
  ): Promise<OfficialView | null> {
    const [view] = official === null ? [] : await this.viewsOf(tx, associationId, [official]);
    return view ?? null;
  }

  private async viewsOf(
    tx: EntityManager,
    associationId: string,
    officials: readonly Official[],
  ): Promise<OfficialView[]> {
    const ladder = await tx.findBy(LevelStep, { associationId });
    const nameByLevel = new Map(ladder.map(({ level, name }) => [level, name]));
    const placeIds = officials.flatMap(({ homePlaceId }) => (homePlaceId === null ? [] : [homePlaceId]));
    const places = await tx.findBy(Place, { associationId, id: In(placeIds) });
    const placeById = new Map(places.map((place) => [place.id, place]));
    return officials.map((official) => {
      const home = official.homePlaceId === null ? undefined : placeById.get(official.homePlaceId);
      return {
        official,
        levelName: nameByLevel.get(official.level) ?? String(official.level),
        home: home === undefined ? null : { latitude: home.latitude, longitude: home.longitude },
      };
    });
  }
}
