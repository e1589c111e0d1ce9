import { createContext } from 'preact';
import { useContext } from 'preact/hooks';

/** What parts of a page need of the request that they are drawn for. */
export interface FrameContext {
  /** Proves that a form was drawn for this browser. */
  readonly formToken: string;
  /** BCP 47 tag of numbers and dates. */
  readonly language: string;
}

export const PageContext = createContext<FrameContext>({ formToken: '', language: 'en-GB' });

export function useFrame(): FrameContext {
  return useContext(PageContext);
}
