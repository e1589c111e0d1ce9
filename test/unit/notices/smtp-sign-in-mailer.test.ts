import { isMailAddress } from '../../../src/notices/mail';
import { SmtpMailer } from '../../../src/notices/smtp-mailer';
import { SmtpSignInMailer } from '../../../src/notices/smtp-sign-in-mailer';
import { mailCatcher } from '../../database/notices/mail-catcher';

// Goal: a sign-in link reaches its person whole, and its secret stands nowhere but in the body.
it('brings the link', async () => {
  const catcher = await mailCatcher();
  const mailer = new SmtpMailer({ smtpUrl: catcher.url, publicUrl: () => 'https://crews.example.org' });
  const secret = 'a'.repeat(43);
  const link = `https://crews.example.org/sign-in/${secret}?next=%2Fmarram-coast%2Fmy-games`;
  await new SmtpSignInMailer(mailer).send({
    accountId: 'x',
    email: 'ida@officials.example',
    displayName: 'Ida "the whistle" Sandell\r\nBcc: evil@example.org',
    link,
    expiresAt: new Date('2026-11-20T12:15:00Z'),
  });
  mailer.close();
  await catcher.close();
  const [mail] = catcher.taken;
  expect(mail?.text).toContain(link);
  expect(mail?.html).toContain(`href="${link}"`);
  expect(mail?.text).toContain('until 12:15 UTC');
  expect(mail?.bcc).toBeUndefined();
  for (const { key, line } of mail?.headerLines ?? []) expect(`${key} ${line}`).not.toContain(secret);
});

it.each([
  ['ida@officials.example', true],
  ["o'hara+games@sub.officials.example", true],
  ['ida@', false],
  ['Ida <ida@officials.example>', false],
  ['ida@officials.example, eve@evil.example', false],
  ['ida@officials.example\r\nBcc: eve@evil.example', false],
  ['+44 1632 960001', false],
])('%j can be written to: %s', (text, expected) => {
  expect(isMailAddress(text)).toBe(expected);
});
