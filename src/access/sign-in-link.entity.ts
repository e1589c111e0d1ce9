import { Column, Entity, PrimaryColumn } from 'typeorm';

/** A one-time link by which an account signs in; only the SHA-256 of its token is kept. */
@Entity('sign_in_link')
export class SignInLink {
  @PrimaryColumn('bytea')
  tokenHash!: Buffer;

  @Column('uuid')
  accountId!: string;

  @Column('timestamptz')
  createdAt!: Date;

  @Column('timestamptz')
  expiresAt!: Date;

  @Column({ type: 'timestamptz', nullable: true })
  usedAt!: Date | null;
}
