import type { NestFastifyApplication } from '@nestjs/platform-fastify';

type Method = 'GET' | 'POST' | 'PUT' | 'DELETE' | 'HEAD';

/** What came back. */
export interface Answer {
  readonly status: number;
  readonly headers: Readonly<Record<string, string | string[] | number | undefined>>;
  readonly body: string;
  readonly location: string | undefined;
  json(): unknown;
}

export interface Sent {
  readonly form?: Readonly<Record<string, string>>;
  readonly json?: unknown;
  readonly headers?: Readonly<Record<string, string>>;
  readonly multipart?: { readonly boundary: string; readonly body: string };
}

/** As much of a browser as the tests need: it keeps cookies, says where it stands, and fills the token of the last form in. */
export class Browser {
  private readonly cookies = new Map<string, string>();
  private formToken = '';

  constructor(private readonly app: NestFastifyApplication) {}

  cookie(name: string): string | undefined {
    return this.cookies.get(name);
  }

  setCookie(name: string, value: string): void {
    this.cookies.set(name, value);
  }

  get(url: string, headers: Readonly<Record<string, string>> = {}): Promise<Answer> {
    return this.request('GET', url, { headers });
  }

  /** Sends a form as the last page that was read would: from our own site, with its token. */
  post(url: string, form: Readonly<Record<string, string>> = {}): Promise<Answer> {
    const headers = { 'sec-fetch-site': 'same-origin', origin: 'http://localhost' };
    return this.request('POST', url, { form: { formToken: this.formToken, ...form }, headers });
  }

  async request(method: Method, url: string, sent: Sent = {}): Promise<Answer> {
    const payload =
      sent.form !== undefined
        ? new URLSearchParams(sent.form).toString()
        : sent.json !== undefined
          ? JSON.stringify(sent.json)
          : sent.multipart?.body;
    const contentType =
      sent.form !== undefined
        ? 'application/x-www-form-urlencoded'
        : sent.json !== undefined
          ? 'application/json'
          : sent.multipart !== undefined
            ? `multipart/form-data; boundary=${sent.multipart.boundary}`
            : undefined;
    const answer = await this.app.inject({
      method,
      url,
      headers: {
        host: 'localhost',
        ...(contentType === undefined ? {} : { 'content-type': contentType }),
        ...(this.cookies.size === 0
          ? {}
          : { cookie: [...this.cookies].map(([name, value]) => `${name}=${value}`).join('; ') }),
        ...sent.headers,
      },
      ...(payload === undefined ? {} : { payload }),
    });
    for (const { name, value } of answer.cookies) {
      if (value === '') this.cookies.delete(name);
      else this.cookies.set(name, value);
    }
    this.formToken = /name="formToken" value="([^"]+)"/.exec(answer.body)?.[1] ?? this.formToken;
    return {
      status: answer.statusCode,
      headers: answer.headers,
      body: answer.body,
      location: typeof answer.headers.location === 'string' ? answer.headers.location : undefined,
      json: () => JSON.parse(answer.body) as unknown,
    };
  }
}
