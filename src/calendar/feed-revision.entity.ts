import { Column, Entity, PrimaryColumn } from 'typeorm';

/** Counts every change that an official's feed would show, events that leave it included. */
@Entity('feed_revision')
export class FeedRevision {
  @PrimaryColumn('uuid')
  associationId!: string;

  @PrimaryColumn('uuid')
  officialId!: string;

  @Column('bigint')
  revision!: string;

  @Column('timestamptz')
  changedAt!: Date;
}
