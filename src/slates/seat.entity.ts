import { Column, Entity, PrimaryColumn } from 'typeorm';
import type { SeatName } from './seat-name';

/** A seat in the assignor's working copy of a slate, before anybody is told. */
@Entity('seat')
export class Seat {
  @PrimaryColumn('uuid')
  associationId!: string;

  @PrimaryColumn('uuid')
  gameId!: string;

  @PrimaryColumn('text')
  seat!: SeatName;

  @Column({ type: 'uuid', nullable: true })
  officialId!: string | null;

  /** A locked seat keeps its official, or stays open on purpose when it has none. */
  @Column('boolean')
  locked!: boolean;

  @Column('integer')
  version!: number;
}
