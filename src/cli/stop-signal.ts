/** Whether somebody asked the process to end. */
export interface StopSignal {
  /** Resolves at the first request. */
  readonly asked: Promise<void>;
  isAsked(): boolean;
}

/** Listens for Ctrl-C and for a polite end; a second request finds the usual handlers and ends the process at once. */
export function stopSignal(): StopSignal {
  let isAsked = false;
  const asked = new Promise<void>((resolve) => {
    const stop = () => {
      process.off('SIGINT', stop);
      process.off('SIGTERM', stop);
      isAsked = true;
      resolve();
    };
    process.on('SIGINT', stop);
    process.on('SIGTERM', stop);
  });
  return { asked, isAsked: () => isAsked };
}
