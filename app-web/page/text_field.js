// The one real text field, laid over the canvas while a text is typed: caret, selection, paste, autocorrection and the
// phone's own keyboard are then the real thing. The canvas gets no keys meanwhile.

let open = null;

// request: { text, limit, label, changed(text), done() }; the program says with every frame where it stands
export function openTextField(request) {
  closeTextField();
  const input = document.createElement("input");
  Object.assign(input, {
    type: "text", className: "text-field", value: request.text, maxLength: request.limit, autocomplete: "off",
    enterKeyHint: "done",
  });
  input.setAttribute("aria-label", request.label);
  open = { input, request };
  listen(input, request);
  document.body.append(input);
  input.focus({ preventScroll: true });
  input.setSelectionRange(input.value.length, input.value.length);
}

export const textFieldIsOpen = () => open !== null;

export function placeTextField(x, y, width, height) {
  if (open) Object.assign(open.input.style, { left: `${x}px`, top: `${y}px`, width: `${width}px`, height: `${height}px` });
}

function listen(input, request) {
  input.addEventListener("input", (event) => { if (!event.isComposing) request.changed(input.value); });
  input.addEventListener("compositionend", () => request.changed(input.value));
  input.addEventListener("keydown", (event) => {
    if (event.key === "Escape") request.changed(request.text);
    if (event.key === "Escape" || (event.key === "Enter" && !event.isComposing)) closeTextField();
  });
  input.addEventListener("blur", closeTextField);
}

export function closeTextField() {
  if (!open) return;
  const { input, request } = open;
  open = null;  // removing the field blurs it, which comes here again
  input.remove();
  window.scrollTo(0, 0);
  request.done();
}
