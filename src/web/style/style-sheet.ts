import { base } from './base.css';
import { floor } from './floor.css';
import { forms } from './forms.css';
import { frame } from './frame.css';
import { paper } from './paper.css';
import { parts } from './parts.css';
import { print } from './print.css';
import { tokens } from './tokens.css';

/** The one style sheet of all pages. */
export const styleSheet = [tokens, base, frame, parts, forms, floor, print, paper].join('\n');
