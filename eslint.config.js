import js from '@eslint/js';
import tseslint from 'typescript-eslint';

/** Wall-clock reads are allowed only where the clock is made (src/platform/clock.ts) and in the pages. */
const noWallClock = {
  'no-restricted-syntax': [
    'error',
    {
      selector: "NewExpression[callee.name='Date'][arguments.length=0]",
      message: 'Inject the clock (src/platform/clock.ts).',
    },
    {
      selector: "CallExpression[callee.object.name='Date'][callee.property.name='now']",
      message: 'Inject the clock.',
    },
    {
      selector: "MemberExpression[object.property.name='Now']",
      message: 'Inject the clock instead of Temporal.Now.',
    },
    {
      selector: "CallExpression[callee.object.name='Math'][callee.property.name='random']",
      message: 'No randomness here.',
    },
  ],
};

export default tseslint.config(
  { ignores: ['dist/**', 'coverage/**', 'node_modules/**', '.bellcrank/**'] },
  js.configs.recommended,
  ...tseslint.configs.recommended,
  {
    rules: {
      '@typescript-eslint/no-unused-vars': ['error', { argsIgnorePattern: '^_', varsIgnorePattern: '^_' }],
      '@typescript-eslint/consistent-type-imports': 'off',
      eqeqeq: ['error', 'always'],
      'max-lines': ['error', { max: 400, skipBlankLines: true, skipComments: true }],
      'no-console': 'error',
    },
  },
  {
    files: ['src/**/*.ts'],
    ignores: ['src/platform/clock.ts', 'src/web/page/**', 'src/**/*.spec.ts'],
    rules: noWallClock,
  },
  {
    files: ['test/**'],
    rules: { 'max-lines': ['error', { max: 600, skipBlankLines: true, skipComments: true }] },
  },
  {
    files: ['test/**', '**/*.cjs', 'src/main.ts', 'src/cli/**', '*.js', '*.mjs'],
    rules: { 'no-console': 'off' },
  },
  {
    files: ['**/*.cjs', '**/*.mjs', '*.js'],
    languageOptions: {
      globals: {
        module: 'writable',
        require: 'readonly',
        process: 'readonly',
        console: 'readonly',
        fetch: 'readonly',
        performance: 'readonly',
        setTimeout: 'readonly',
        URL: 'readonly',
      },
    },
  },
);
