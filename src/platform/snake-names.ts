import { DefaultNamingStrategy } from 'typeorm';

/** Entity properties are camelCase, columns are snake_case: `durationMinutes` is `duration_minutes`. */
export class SnakeNames extends DefaultNamingStrategy {
  override columnName(propertyName: string, customName: string | undefined, prefixes: string[]): string {
    const name = customName ?? propertyName.replace(/[A-Z]/g, (letter) => `_${letter.toLowerCase()}`);
    return [...prefixes, name].join('_');
  }
}
