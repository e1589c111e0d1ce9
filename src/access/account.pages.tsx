import { Controller, Get, Param, Post } from '@nestjs/common';
import { RequestError } from '../platform/request-error';
import { page, seeOther, type PageResult } from '../web/http/answer';
import { ActionForm } from '../web/parts/form';
import { Moment } from '../web/parts/instant';
import { EmptyState } from '../web/parts/notice';
import { Allow } from './allow';
import { CurrentAccount, type SignedIn } from './member';
import { Sessions, type MembershipView, type SessionView } from './sessions';

/** The first page, and one's own account. */
@Controller()
export class AccountPages {
  constructor(private readonly sessions: Sessions) {}

  @Get()
  @Allow('signed-in')
  async first(@CurrentAccount() account: SignedIn): Promise<PageResult> {
    const memberships = await this.sessions.memberships(account.accountId);
    const [only] = memberships;
    return memberships.length === 1 && only !== undefined
      ? seeOther(`/${only.slug}`)
      : associationsPage(memberships);
  }

  @Get('account')
  @Allow('signed-in')
  async account(@CurrentAccount() account: SignedIn): Promise<PageResult> {
    return accountPage({
      account,
      memberships: await this.sessions.memberships(account.accountId),
      sessions: await this.sessions.list(account),
    });
  }

  @Post('account/sessions/:id/sign-out')
  @Allow('signed-in')
  async revoke(@CurrentAccount() account: SignedIn, @Param('id') id: string): Promise<PageResult> {
    if (!(await this.sessions.revoke(account, id))) throw new RequestError('REQUEST.NOT_FOUND');
    return seeOther('/account');
  }
}

export function associationsPage(memberships: readonly MembershipView[]): PageResult {
  return page({
    title: 'Your associations',
    body: (
      <div class="narrow stack">
        <h1>Your associations</h1>
        {memberships.length === 0 ? (
          <EmptyState>
            <p>No association has you among its members.</p>
            <p>Ask its administrator to add you with the address that you signed in with.</p>
          </EmptyState>
        ) : (
          <AssociationList memberships={memberships} />
        )}
      </div>
    ),
  });
}

function AssociationList({ memberships }: { memberships: readonly MembershipView[] }) {
  return (
    <ul>
      {memberships.map(({ slug, name, roles }) => (
        <li key={slug}>
          <a href={`/${slug}`}>{name}</a> <small>as {roles.join(', ')}</small>
        </li>
      ))}
    </ul>
  );
}

export function accountPage(props: {
  account: SignedIn;
  memberships: readonly MembershipView[];
  sessions: readonly SessionView[];
}): PageResult {
  const zone = props.memberships[0]?.timeZone;
  return page({
    title: 'Your account',
    body: (
      <div class="narrow stack">
        <h1>{props.account.displayName}</h1>
        <p>You sign in with {props.account.email}.</p>
        <h2>Your associations</h2>
        <AssociationList memberships={props.memberships} />
        <h2>Where you are signed in</h2>
        <p>Sign out whatever you do not recognise or no longer use.</p>
        <ul class="plain stack">
          {props.sessions.map((session) => (
            <li key={session.id} class="sheet">
              <p>
                <b>{session.deviceLabel}</b> {session.isThisOne ? '(this one)' : ''}
              </p>
              <p class="small">
                Last used <SeenAt at={session.lastSeenAt} zone={zone} />. Signed in since{' '}
                <SeenAt at={session.createdAt} zone={zone} />.
              </p>
              <ActionForm
                action={session.isThisOne ? '/sign-out' : `/account/sessions/${session.id}/sign-out`}
              >
                <button type="submit">Sign out</button>
              </ActionForm>
            </li>
          ))}
        </ul>
      </div>
    ),
  });
}

/** In the zone of the member's association; who has none gets the instant itself. */
function SeenAt({ at, zone }: { at: Date; zone: string | undefined }) {
  return zone === undefined ? <time>{at.toISOString()}</time> : <Moment at={at} zone={zone} />;
}
