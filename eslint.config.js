import tseslint from 'typescript-eslint';

const pure = [
  'math',
  'sensors/*.ts',
  'sensors/decode',
  'sensors/clock',
  'orientation',
  'body',
  'swings',
  'coaching',
  'analysis',
].map((f) => (f.endsWith('.ts') ? `src/${f}` : `src/${f}/**/*.ts`));

export default tseslint.config(
  { ignores: ['dist', 'node_modules', 'coverage', 'recordings', 'firmware-notes'] },
  ...tseslint.configs.recommended,
  {
    files: ['src/**/*.ts', 'src/**/*.tsx', 'tests/**/*.ts'],
    rules: {
      '@typescript-eslint/consistent-type-imports': 'error',
      '@typescript-eslint/no-unused-vars': ['error', { argsIgnorePattern: '^_' }],
      eqeqeq: 'error',
      'no-console': 'error',
    },
  },
  {
    files: pure,
    rules: {
      'no-restricted-globals': [
        'error',
        'Date',
        'performance',
        'setTimeout',
        'setInterval',
        'process',
        'window',
        'document',
        'console',
        'fetch',
      ],
      'no-restricted-properties': [
        'error',
        {
          object: 'Math',
          property: 'random',
          message: 'Pure folders are deterministic: pass a seeded generator in.',
        },
      ],
    },
  },
  {
    files: ['src/dashboard/**/*.tsx'],
    rules: {
      // People write in any direction: fields of text say theirs, and what was written is shown by `Own`.
      'no-restricted-syntax': [
        'error',
        {
          selector:
            "JSXOpeningElement[name.name='textarea']:not(:has(JSXAttribute[name.name='dir']))",
          message: 'A field of people’s text has dir="auto".',
        },
        {
          selector:
            "JSXOpeningElement[name.name='input']:has(JSXAttribute[name.name='type'][value.value=/^(text|search)$/]):not(:has(JSXAttribute[name.name='dir']))",
          message: 'A field of people’s text has dir="auto"; one of numbers or codes dir="ltr".',
        },
        {
          selector: "JSXOpeningElement[name.name='bdi']",
          message: 'People’s text is shown by `Own` (shell/Own.tsx).',
        },
      ],
    },
  },
  { files: ['src/dashboard/shell/Own.tsx'], rules: { 'no-restricted-syntax': 'off' } },
  { files: ['src/main/**/*.ts', 'tests/**/*.ts', '.build/**'], rules: { 'no-console': 'off' } },
);
