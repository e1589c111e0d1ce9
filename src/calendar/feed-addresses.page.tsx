import type { JSX } from 'preact';
import { ActionForm, Field } from '../web/parts/form';
import { Moment } from '../web/parts/instant';
import { EmptyState, Notice } from '../web/parts/notice';
import type { FeedAddress } from './feed-tokens.service';

/** A feed address in the only answer that shows it. */
export interface NewAddress {
  readonly address: string;
  /** The same for programs that subscribe: `webcal:`. */
  readonly subscribe: string;
}

export interface FeedAddressesProps {
  /** Path of the page. */
  readonly path: string;
  readonly zone: string;
  readonly addresses: readonly FeedAddress[];
  readonly made: NewAddress | null;
  /** How many addresses are allowed, when one more was refused. */
  readonly refusedAt: number | null;
}

/** An official's calendar addresses: make one, subscribe to it, replace or end it. */
export function FeedAddressesPage(props: FeedAddressesProps): JSX.Element {
  return (
    <div class="narrow stack">
      <h1>My calendar</h1>
      <p>
        Subscribe once, and your games stand in your own calendar: when to leave home, where to go, with whom.
        Moved games move, and games that are no longer yours are taken off.
      </p>
      {props.made === null ? null : <MadeNotice made={props.made} />}
      {props.refusedAt === null ? null : (
        <Notice tone="fault">
          <p>
            You have {props.refusedAt} addresses already. End one that you no longer use, then make a new one.
          </p>
        </Notice>
      )}
      <p class="small quiet">
        Calendar programs look again when they please. Many do so within the hour, but it may take a day in
        some calendar services: never rely on it alone for a late change. You are told of changes by e-mail as
        well.
      </p>
      <h2>Your addresses</h2>
      {props.addresses.length === 0 ? (
        <EmptyState>
          <p>You have none yet. Make one for each program or device, so that you can end it alone.</p>
        </EmptyState>
      ) : (
        <ul class="plain stack">
          {props.addresses.map((address) => (
            <AddressItem key={address.id} address={address} {...props} />
          ))}
        </ul>
      )}
      <h2>A new address</h2>
      <ActionForm action={props.path}>
        <Field name="name" label="What is it for?" hint="Such as phone, or family calendar" maxLength={60} />
        <button type="submit" class="first">
          Make an address
        </button>
      </ActionForm>
    </div>
  );
}

function MadeNotice({ made }: { readonly made: NewAddress }) {
  return (
    <Notice tone="good">
      <p>
        <b>This is the only time that the address is shown.</b> Use it now, and give it to nobody: whoever has
        it can read your games.
      </p>
      <p>
        <a class="button first" href={made.subscribe}>
          Subscribe on this device
        </a>
      </p>
      <p>Or copy it into your calendar program, where it says “subscribe by address”:</p>
      <p>
        <code class="select-all">{made.address}</code>
      </p>
      <p>
        Or <a href={made.address}>open it as a file</a>, which is a copy of today and does not follow changes.
      </p>
    </Notice>
  );
}

function AddressItem(props: { readonly address: FeedAddress; readonly path: string; readonly zone: string }) {
  const { address, path, zone } = props;
  return (
    <li class="sheet">
      <p>
        <b>{address.name === '' ? 'Without a name' : address.name}</b>
      </p>
      <p class="small">
        Made <Moment at={address.createdAt} zone={zone} />.{' '}
        {address.lastUsedAt === null ? (
          'Not used yet.'
        ) : (
          <>
            Last used <Moment at={address.lastUsedAt} zone={zone} />
            {address.lastUserAgent === '' ? '' : ` by ${address.lastUserAgent}`}.
          </>
        )}
      </p>
      <div class="row">
        <ActionForm action={`${path}/${address.id}/rotate`}>
          <button type="submit">Replace it</button>
        </ActionForm>
        <ActionForm action={`${path}/${address.id}/revoke`}>
          <button type="submit">End it</button>
        </ActionForm>
      </div>
    </li>
  );
}
