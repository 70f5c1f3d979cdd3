interface PageLink {
  readonly name: string;
  readonly href: string;
  readonly present: boolean;
}

/** Where one can go; in the bar, or as a list in its menu where the bar has no room. */
export function PageLinks(props: { readonly label: string; readonly links: readonly PageLink[] }) {
  return (
    <nav aria-label={props.label}>
      {props.links.map(({ name, href, present }) => (
        <a key={href} href={href} aria-current={present ? 'page' : undefined}>
          {name}
        </a>
      ))}
    </nav>
  );
}
