import { Body, Controller, Get, Inject, Param, Post, Query, Req, Res } from '@nestjs/common';
import type { FastifyReply, FastifyRequest } from 'fastify';
import { clockToken, type Clock } from '../platform/clock';
import { page, seeOther, type PageResult } from '../web/http/answer';
import { ServiceAddress } from '../web/http/service-address';
import { ActionForm, Field } from '../web/parts/form';
import { Notice } from '../web/parts/notice';
import { Allow } from './allow';
import { deviceLabel } from './device-label';
import { localPath } from './local-path';
import { CurrentAccount, type SignedIn } from './member';
import { RequestLimit } from './request-limit';
import { clearSessionCookie, setSessionCookie } from './session-cookie';
import { Sessions } from './sessions';
import { linkMinutes, SignIn } from './sign-in';

interface SignInForm {
  readonly email?: unknown;
  readonly next?: unknown;
}

/** Signing in and out. */
@Controller()
export class SignInPages {
  private readonly limit: RequestLimit;

  constructor(
    private readonly signIn: SignIn,
    private readonly sessions: Sessions,
    private readonly address: ServiceAddress,
    @Inject(clockToken) clock: Clock,
  ) {
    this.limit = new RequestLimit(clock, { max: 60, windowMinutes: linkMinutes });
  }

  @Get('sign-in')
  @Allow('anyone')
  form(@Query('next') next: unknown): PageResult {
    return signInPage({ next: localPath(next) });
  }

  @Post('sign-in')
  @Allow('anyone')
  ask(@Body() form: SignInForm | undefined, @Req() request: FastifyRequest): PageResult {
    this.limit.count(request.ip);
    const next = localPath(form?.next);
    const email = typeof form?.email === 'string' ? form.email.trim() : '';
    if (!/^[^\s@]+@[^\s@]+$/.test(email) || email.length > 254) {
      return signInPage({
        next,
        email: email.slice(0, 254),
        error: 'Enter an address such as name@example.org.',
      });
    }
    this.signIn.ask(email, next);
    return linkSentPage();
  }

  @Get('sign-in/:token')
  @Allow('anyone')
  async open(@Param('token') token: string, @Query('next') next: unknown): Promise<PageResult> {
    return (await this.signIn.isGood(token)) ? confirmPage(token, localPath(next)) : spentPage();
  }

  @Post('sign-in/:token')
  @Allow('anyone')
  async use(
    @Param('token') token: string,
    @Body() form: SignInForm | undefined,
    @Req() request: FastifyRequest,
    @Res({ passthrough: true }) reply: FastifyReply,
  ): Promise<PageResult> {
    this.limit.count(request.ip);
    const outcome = await this.signIn.use(token, deviceLabel(request.headers['user-agent']));
    if (outcome.kind === 'refused') return spentPage();
    setSessionCookie(reply, outcome.sessionToken, this.address.isSecure());
    return seeOther(localPath(form?.next));
  }

  @Post('sign-out')
  @Allow('signed-in')
  async signOut(
    @CurrentAccount() account: SignedIn,
    @Res({ passthrough: true }) reply: FastifyReply,
  ): Promise<PageResult> {
    await this.sessions.signOut(account);
    clearSessionCookie(reply);
    return seeOther('/sign-in');
  }
}

export function signInPage(props: { next: string; email?: string; error?: string }): PageResult {
  return page({
    title: 'Sign in',
    ...(props.error === undefined ? {} : { status: 422 }),
    body: (
      <div class="narrow stack">
        <h1>Sign in</h1>
        <p>
          There is no password. Tell us your e-mail address, and we send you a link that opens the door once.
        </p>
        <ActionForm action="/sign-in">
          <input type="hidden" name="next" value={props.next} />
          <Field
            name="email"
            label="E-mail address"
            type="email"
            autocomplete="email"
            inputMode="email"
            maxLength={254}
            required
            value={props.email ?? ''}
            error={props.error}
          />
          <button class="first" type="submit">
            Send me a link
          </button>
        </ActionForm>
      </div>
    ),
  });
}

/** Says the same whether or not the address is known. */
function linkSentPage(): PageResult {
  return page({
    title: 'Look into your mail',
    body: (
      <div class="narrow stack">
        <h1>Look into your mail</h1>
        <Notice tone="plain">
          <p>
            If the address belongs to a member, a link is on its way. It works once, within {linkMinutes}{' '}
            minutes.
          </p>
        </Notice>
        <p>
          Nothing there after a few minutes? Look into the folder for unwanted mail, or{' '}
          <a href="/sign-in">ask again</a>. If it still does not come, your association may know you by
          another address.
        </p>
      </div>
    ),
  });
}

function confirmPage(token: string, next: string): PageResult {
  return page({
    title: 'Sign in',
    body: (
      <div class="narrow stack">
        <h1>One more tap</h1>
        <p>
          Mail programs open links by themselves to look at them. So that only you use yours, press the
          button.
        </p>
        <ActionForm action={`/sign-in/${encodeURIComponent(token)}`}>
          <input type="hidden" name="next" value={next} />
          <button class="first" type="submit">
            Sign me in
          </button>
        </ActionForm>
      </div>
    ),
  });
}

function spentPage(): PageResult {
  return page({
    title: 'This link is spent',
    status: 410,
    body: (
      <div class="narrow stack">
        <h1>This link is spent</h1>
        <p>It was used before, or is older than {linkMinutes} minutes.</p>
        <p>
          <a class="button" href="/sign-in">
            Send me a new one
          </a>
        </p>
      </div>
    ),
  });
}
