import { render } from 'preact-render-to-string';
import { calendarDay, calendarSpan, dayOf, timeOf, wallMinutes } from '../../../src/web/format/instants';
import { changeText, durationText, numberText } from '../../../src/web/format/numbers';
import { FormTokens } from '../../../src/web/http/form-tokens';
import { page } from '../../../src/web/http/answer';
import { renderPage } from '../../../src/web/http/page-renderer';
import { ServiceAddress } from '../../../src/web/http/service-address';
import { Field } from '../../../src/web/parts/form';
import { Pager } from '../../../src/web/parts/pager';
import { clientScript } from '../../../src/web/client/client-script';
import { styleSheet } from '../../../src/web/style/style-sheet';

// Goal: what pages are put together from says the right thing. Method: each part alone, with the values where it could go wrong.
const language = 'en-GB';
const hostile = `"><script>alert(1)</script>`;

test('instants are told by the clock on the wall of the venue, also where clocks have just changed', () => {
  const before = new Date('2026-10-25T00:30:00Z');
  const after = new Date('2026-10-25T01:30:00Z');
  expect([timeOf(before, 'Europe/Copenhagen'), timeOf(after, 'Europe/Copenhagen')]).toEqual([
    '02:30',
    '02:30',
  ]);
  expect(dayOf(new Date('2026-11-14T23:30:00Z'), 'Europe/Copenhagen', language)).toBe('Sunday 15 November');
  expect(wallMinutes(new Date('2026-11-14T17:05:00Z'), 'Europe/Copenhagen')).toBe(18 * 60 + 5);
  expect(calendarDay('2026-11-14', language)).toBe('Saturday 14 November');
  expect(calendarSpan('2026-11-14', '2026-11-14', language)).toBe('14 November 2026');
  expect(calendarSpan('2026-11-14', '2026-11-15', language)).toMatch(/^14\s?–\s?15 November 2026$/u);
});

test('figures are told with unit and sign', () => {
  expect(numberText(1320.4, language)).toBe('1,320');
  expect(numberText(1320.4, 'de-DE', 1)).toBe('1.320,4');
  expect([changeText(0, language), changeText(12, language), changeText(-3, language)]).toEqual([
    'no change',
    '▲ +12',
    '▼ −3',
  ]);
  expect([0, 45, 60, 80].map(durationText)).toEqual(['0 min', '45 min', '1 h', '1 h 20 min']);
});

test('a field keeps what was typed and says beside it what is wrong', () => {
  const html = render(
    <Field name="email" label="E-mail" hint="Yours" value={hostile} error="No." required />,
  );
  expect(html).toContain('aria-describedby="field-email-hint field-email-error"');
  expect(html).toContain('aria-invalid="true"');
  expect(html).toContain('id="field-email-error"');
  expect(html).not.toContain('<script>');
  expect(render(<Field name="a" label="A" />)).not.toMatch(/aria-|error|hint/);
});

test('a list of nothing and the ends of a long one offer only the ways there are', () => {
  const pager = (pageNumber: number, total: number) =>
    render(<Pager page={pageNumber} pageSize={10} total={total} noun="games" to={(n) => `?page=${n}`} />);
  expect(pager(1, 0)).toContain('0 to 0 of 0 games');
  expect(pager(1, 10)).not.toContain('<a');
  expect(pager(1, 11)).toContain('?page=2');
  expect(pager(2, 11)).toContain('11 to 11 of 11 games');
  expect(pager(2, 11)).not.toContain('rel="next"');
});

test('the frame shows only the ways of the visitor and escapes every name', () => {
  const visitor = {
    displayName: hostile,
    roles: ['official'],
    association: { slug: 'x', name: hostile, timeZone: 'Europe/London', language },
  };
  const navigation = [
    { label: 'Mine', path: '/mine', roles: ['official'] },
    { label: 'Theirs', path: '/theirs', roles: ['assignor'] },
  ];
  const html = renderPage(page({ title: hostile, body: <p>{hostile}</p> }), {
    visitor,
    navigation,
    url: '/x/mine?q=1',
    formToken: hostile,
  });
  expect(html).toContain('<a href="/x/mine" aria-current="page">');
  expect(html).not.toContain('Theirs');
  expect(html).not.toContain('<script>');
  expect(html).not.toMatch(/http-equiv/);
});

test('a form token is good for its own browser and installation only', () => {
  const tokens = new FormTokens('one secret');
  const token = tokens.tokenFor('browser');
  expect(tokens.isGood('browser', token)).toBe(true);
  expect(tokens.isGood('other browser', token)).toBe(false);
  expect(new FormTokens('another secret').isGood('browser', token)).toBe(false);
  for (const wrong of ['', undefined, null, [token], `${token}x`])
    expect(tokens.isGood('browser', wrong)).toBe(false);
});

test('the address is the configured one, else where the service listens', () => {
  const configured = new ServiceAddress('https://crews.example.org');
  configured.listensAt('0.0.0.0', 8080);
  expect([configured.url(), configured.isSecure()]).toEqual(['https://crews.example.org', true]);
  const local = new ServiceAddress(null);
  local.listensAt('127.0.0.1', 8081);
  expect([local.url(), local.isSecure()]).toEqual(['http://localhost:8081', false]);
  local.listensAt('fd00::1', 80);
  expect(local.url()).toBe('http://[fd00::1]:80');
});

test('the script is within its allowance and nothing but one call', () => {
  expect(clientScript).toMatch(/^'use strict';\n\(function watchProgress\(\) \{/);
  expect(clientScript.length).toBeLessThan(4000);
});

test('the style sheet is whole: every part is in it and every brace is closed', () => {
  for (const selector of ['--paper', '.skip', '.figure', '.button', '.floor', '@media print']) {
    expect(styleSheet).toContain(selector);
  }
  expect(styleSheet.split('{').length).toBe(styleSheet.split('}').length);
  expect(styleSheet).not.toContain('undefined');
});
