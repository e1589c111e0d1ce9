/** Who asks for something to be done to which association's slates. */
export interface SlateActor {
  readonly associationId: string;
  /** Null for a command on the service's own terminal. */
  readonly accountId: string | null;
}
