/**
 * Runs in the browser: fills the figures of a page that watches something, as the server tells them, and asks for the page again
 * when it is over. An element with `data-watch` names the address of the events; each `data-figure` within names one field.
 */
export function watchProgress(): void {
  document.querySelectorAll<HTMLElement>('[data-watch]').forEach((watched) => {
    const events = new EventSource(watched.dataset['watch'] ?? '');
    events.addEventListener('progress', (event: MessageEvent<string>) => {
      const told = JSON.parse(event.data) as Record<string, unknown>;
      watched.querySelectorAll<HTMLElement>('[data-figure]').forEach((figure) => {
        const value = told[figure.dataset['figure'] ?? ''];
        if (typeof value !== 'string' && typeof value !== 'number') return;
        if (figure instanceof HTMLProgressElement) figure.value = Number(value);
        else figure.textContent = String(value);
      });
    });
    events.addEventListener('finished', () => {
      events.close();
      window.location.reload();
    });
  });
}
