import { watchProgress } from './watch-progress';

/** The one script of all pages. Every page can be read and used without it. */
export const clientScript = `'use strict';\n(${watchProgress.toString()})();\n`;
