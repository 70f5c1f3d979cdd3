/** What changed on the page by itself: seen, and read out when nothing else is. */
export const News = ({ text }: { readonly text: string }) => (
  <p class="fine news" role="status">
    {text}
  </p>
);
