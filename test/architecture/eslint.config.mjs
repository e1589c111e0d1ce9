// Lint rules of the project, run by `npm run lint`. Types are on: floating promises and
// non-exhaustive switches are faults, and so is `any`.
import tseslint from 'typescript-eslint';

export default tseslint.config(
  { ignores: ['dist/**', 'node_modules/**', 'test/architecture/canary/**', '**/*.mjs', '**/*.cjs'] },
  ...tseslint.configs.recommendedTypeChecked,
  {
    languageOptions: { parserOptions: { project: './tsconfig.json', tsconfigRootDir: process.cwd() } },
    rules: {
      '@typescript-eslint/no-explicit-any': 'error',
      '@typescript-eslint/no-floating-promises': 'error',
      '@typescript-eslint/switch-exhaustiveness-check': [
        'error',
        { considerDefaultExhaustiveForUnions: true },
      ],
      '@typescript-eslint/consistent-type-imports': 'off',
      '@typescript-eslint/no-unused-vars': ['error', { argsIgnorePattern: '^_', varsIgnorePattern: '^_' }],
      '@typescript-eslint/require-await': 'off',
      'no-restricted-properties': [
        'error',
        { object: 'Math', property: 'random', message: 'Use the seeded generator, or crypto for secrets.' },
      ],
      eqeqeq: 'error',
      'prefer-const': 'error',
      'no-console': 'error',
    },
  },
  {
    files: ['src/main.ts', 'src/**/*.command.ts', 'test/bench/**', 'test/support/**'],
    rules: { 'no-console': 'off' },
  },
);
