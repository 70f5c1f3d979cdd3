import type { ComponentChildren } from 'preact';
import { useEffect, useRef } from 'preact/hooks';

/** A modal question; Escape and the backdrop close it. */
export function Dialog(props: {
  readonly title: string;
  readonly onClose: () => void;
  readonly children: ComponentChildren;
}) {
  const element = useRef<HTMLDialogElement>(null);
  useEffect(() => {
    element.current?.showModal();
  }, []);
  return (
    <dialog
      ref={element}
      class="dialog"
      aria-labelledby="dialog-title"
      onClose={props.onClose}
      onClick={(event) => event.target === element.current && props.onClose()}
    >
      <div class="dialog-body">
        <h2 id="dialog-title">{props.title}</h2>
        {props.children}
      </div>
    </dialog>
  );
}
