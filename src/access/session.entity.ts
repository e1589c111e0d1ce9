import { Column, Entity, PrimaryColumn } from 'typeorm';

/** A signed-in browser; only the SHA-256 of its token is kept. */
@Entity('session')
export class Session {
  @PrimaryColumn('bytea')
  tokenHash!: Buffer;

  @Column('uuid')
  accountId!: string;

  @Column('text')
  deviceLabel!: string;

  @Column('timestamptz')
  createdAt!: Date;

  @Column('timestamptz')
  lastSeenAt!: Date;

  @Column('timestamptz')
  expiresAt!: Date;

  @Column({ type: 'timestamptz', nullable: true })
  revokedAt!: Date | null;
}
