/** Panels over the page. When the last one has closed, `panel-closed` tells the page that the sheet is in hand again. */

const open = new Set<HTMLDialogElement>();

export function openPanel(dialog: HTMLDialogElement): void {
  if (dialog.open) return;
  dialog.showModal();
  open.add(dialog);
  dialog.addEventListener(
    "close",
    () => {
      open.delete(dialog);
      if (open.size === 0)
        dialog.dispatchEvent(new CustomEvent("panel-closed", { bubbles: true, composed: true }));
    },
    { once: true },
  );
}
