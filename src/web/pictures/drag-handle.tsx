// A point of a drawing that can be moved: by pointer, finger or arrow keys, and announced as a slider.
import { type KeyboardEvent, type PointerEvent, type ReactNode, useRef } from 'react';

export interface DragHandleProps {
  readonly id: string;
  readonly label: string;
  /** Where it stands now, in words and units. */
  readonly valueText: string;
  readonly valueNow: number;
  readonly valueMin: number;
  readonly valueMax: number;
  readonly x: number;
  readonly y: number;
  /** Drawing units moved by pointer since the last call; or key steps in -1, 0, 1. */
  readonly onPointerTo: (x: number, y: number) => void;
  readonly onStep: (right: number, up: number, large: boolean) => void;
  readonly children: ReactNode;
}

/** Half the side of the touch target [units = px]. */
const targetHalf = 22;

const stepOf: Readonly<Record<string, readonly [number, number]>> = {
  ArrowLeft: [-1, 0],
  ArrowRight: [1, 0],
  ArrowUp: [0, 1],
  ArrowDown: [0, -1],
};

export function DragHandle(props: DragHandleProps) {
  const held = useRef<{ dx: number; dy: number } | null>(null);

  const toDrawing = (event: PointerEvent<SVGGElement>): { x: number; y: number } | null => {
    const svg = event.currentTarget.ownerSVGElement;
    const matrix = svg?.getScreenCTM();
    if (!svg || !matrix) return null;
    const point = new DOMPoint(event.clientX, event.clientY).matrixTransform(matrix.inverse());
    return { x: point.x, y: point.y };
  };
  const onPointerDown = (event: PointerEvent<SVGGElement>) => {
    const at = toDrawing(event);
    if (!at) return;
    event.currentTarget.setPointerCapture(event.pointerId);
    held.current = { dx: at.x - props.x, dy: at.y - props.y };
  };
  const onPointerMove = (event: PointerEvent<SVGGElement>) => {
    const at = held.current && toDrawing(event);
    if (!at || !held.current) return;
    props.onPointerTo(at.x - held.current.dx, at.y - held.current.dy);
  };
  const release = () => {
    held.current = null;
  };
  const onKeyDown = (event: KeyboardEvent<SVGGElement>) => {
    const step = stepOf[event.key];
    if (!step || event.metaKey || event.ctrlKey || event.altKey) return;
    event.preventDefault();
    props.onStep(step[0], step[1], event.shiftKey);
  };

  return (
    <g
      className="handle"
      data-handle={props.id}
      role="slider"
      tabIndex={0}
      aria-label={props.label}
      aria-valuenow={props.valueNow}
      aria-valuemin={props.valueMin}
      aria-valuemax={props.valueMax}
      aria-valuetext={props.valueText}
      onPointerDown={onPointerDown}
      onPointerMove={onPointerMove}
      onPointerUp={release}
      onPointerCancel={release}
      onKeyDown={onKeyDown}
    >
      <rect
        className="handle-target"
        x={props.x - targetHalf}
        y={props.y - targetHalf}
        width={targetHalf * 2}
        height={targetHalf * 2}
        rx={targetHalf}
      />
      {props.children}
    </g>
  );
}
