import { Column, Entity, PrimaryColumn } from 'typeorm';

/** The secret of one feed address of an official; only its SHA-256 is kept. */
@Entity('feed_token')
export class FeedToken {
  @PrimaryColumn('uuid')
  associationId!: string;

  @PrimaryColumn('uuid')
  id!: string;

  @Column('uuid')
  officialId!: string;

  @Column('bytea')
  tokenHash!: Buffer;

  @Column('text')
  name!: string;

  @Column('timestamptz')
  createdAt!: Date;

  @Column({ type: 'timestamptz', nullable: true })
  revokedAt!: Date | null;

  @Column({ type: 'timestamptz', nullable: true })
  lastUsedAt!: Date | null;

  @Column('text')
  lastUserAgent!: string;
}
