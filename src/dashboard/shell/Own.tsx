import type { ComponentChildren } from 'preact';

/** What a person wrote, or is called: in its own direction, and a long word in it breaks. */
export const Own = ({ children }: { readonly children: ComponentChildren }) => (
  <bdi dir="auto">{children}</bdi>
);
