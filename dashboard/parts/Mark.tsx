// Shapes that stand beside a word, never instead of it.

const shapes = {
  alarm: <path d="M8 1L15.5 15H.5Z" class="solid" />,
  care: <path d="M8 1L15.5 15H.5ZM8 6V10.5M8 12V13" class="line" />,
  wet: <path d="M1 1H15V15H1ZM1 8L8 1M1 15L15 1M8 15L15 8" class="line" />,
  dry: <path d="M2 14C2 6 6 2 14 2C14 10 10 14 2 14ZM2 14L10 6" class="line" />,
  unknown: <path d="M1 1H15V15H1Z" class="dashed" />,
  holding: <path d="M1 8H15M1 5V11M15 5V11" class="line" />,
  warming: <path d="M1 14L14 3M8 3H14V9" class="line" />,
  warm: <path d="M8 1L15 8L8 15L1 8Z" class="solid" />,
  done: <path d="M2 9L6 13L14 3" class="line" />,
  no: <path d="M2 8H14" class="line" />,
  lapsed: <path d="M3 3L13 13M13 3L3 13" class="line" />,
  later: <path d="M8 1A7 7 0 1 0 8 15A7 7 0 1 0 8 1M8 4V8L11 10" class="line" />,
};

export type Shape = keyof typeof shapes;

export function Mark({ shape }: { shape: Shape }) {
  return (
    <svg class={`mark mark-${shape}`} viewBox="0 0 16 16" width="16" height="16" aria-hidden="true">
      {shapes[shape]}
    </svg>
  );
}
