/** A message ready to leave: what mail programs need, nothing of how it is sent. */
export interface Mail {
  /** Who it is from, as people read it. */
  readonly fromName: string;
  /** Where answers go, to a person; null where the association has not said. */
  readonly replyTo: string | null;
  readonly to: MailAddress;
  /** A minor's guardian. */
  readonly cc: MailAddress | null;
  readonly subject: string;
  readonly content: MailContent;
  /** Left part of the Message-ID: the same message has the same one at every try (RFC 5322 §3.6.4). */
  readonly messageKey: string;
  /** What it continues: messages of one thread share it; null for a message of its own. */
  readonly threadKey: string | null;
}

export interface MailAddress {
  readonly name: string;
  readonly address: string;
}

/** The words of a message, from which both its text and its HTML are made. */
export interface MailContent {
  readonly greeting: string;
  readonly paragraphs: readonly string[];
  readonly facts: readonly { readonly label: string; readonly text: string }[];
  readonly links: readonly { readonly label: string; readonly address: string }[];
  readonly closing: string;
}

/** Whether a text that people typed can be written to: one address, no line ends, no blanks. */
export function isMailAddress(text: string): boolean {
  return text.length <= 254 && /^[^\s@<>,;:"()[\]\\]+@[A-Za-z0-9](?:[A-Za-z0-9.-]*[A-Za-z0-9])?$/.test(text);
}
