"""The messages of the Language Server Protocol, each bound to what answers it."""

from __future__ import annotations

import asyncio
from collections.abc import Callable
from typing import TYPE_CHECKING, Any

from lsprotocol import types as lsp
from pygls.exceptions import JsonRpcException

from speclint.editor.actions import Fix, fixes
from speclint.editor.complete import completions
from speclint.editor.documents import Document
from speclint.editor.hover import as_hover, hover
from speclint.editor.outline import folds, symbols
from speclint.editor.places import definitions, references, typical_setting
from speclint.editor.positions import Lines
from speclint.editor.reading import Reading
from speclint.editor.rename import CannotRename, renamable, renamed
from speclint.language.edit import Edit

if TYPE_CHECKING:
    from speclint.editor.server import Server


def bind_texts(server: Server) -> None:
    """What is told of texts: opened, changed, closed, saved, changed on disk."""
    documents, reviews = server.documents, server.reviews

    @server.feature(lsp.INITIALIZE)
    def _initialize(params: lsp.InitializeParams) -> None:
        agreed = server.workspace.position_encoding
        documents.encoding = str(agreed.value if isinstance(agreed, lsp.PositionEncodingKind) else agreed)

    @server.feature(lsp.SHUTDOWN)
    def _shutdown(_: Any) -> None:
        server.ended = True

    @server.feature(lsp.TEXT_DOCUMENT_DID_OPEN)
    async def _open(params: lsp.DidOpenTextDocumentParams) -> None:
        text = params.text_document
        documents.put(Document(text.uri, text.text, text.version))
        reviews.everything()

    @server.feature(lsp.TEXT_DOCUMENT_DID_CHANGE)
    def _change(params: lsp.DidChangeTextDocumentParams) -> None:
        text = params.text_document
        if documents.change(text.uri, text.version, params.content_changes) is not None:
            reviews.changed(text.uri)

    @server.feature(lsp.TEXT_DOCUMENT_DID_CLOSE)
    def _close(params: lsp.DidCloseTextDocumentParams) -> None:
        if documents.close(params.text_document.uri):
            reviews.closed(params.text_document.uri)
            reviews.everything()

    @server.feature(lsp.TEXT_DOCUMENT_DID_SAVE)
    @server.feature(lsp.WORKSPACE_DID_CHANGE_WATCHED_FILES)
    def _on_disk(_: Any) -> None:
        reviews.everything()


def bind_questions(server: Server) -> None:
    """What is asked of a text and changes nothing."""

    @server.feature(lsp.TEXT_DOCUMENT_HOVER)
    async def _hover(params: lsp.HoverParams) -> lsp.Hover | None:
        about = server.client_capabilities.text_document
        forms = about.hover.content_format if about and about.hover else None
        markdown = forms is None or lsp.MarkupKind.Markdown in forms

        def told(reading: Reading) -> lsp.Hover | None:
            shown = hover(reading, reading.lines.offset(params.position))
            return as_hover(reading, shown, markdown) if shown else None

        return await server.ask(params.text_document.uri, told)

    @server.feature(lsp.TEXT_DOCUMENT_COMPLETION, lsp.CompletionOptions(trigger_characters=[" ", '"', ","]))
    async def _complete(params: lsp.CompletionParams) -> lsp.CompletionList | None:
        return await server.ask(
            params.text_document.uri, lambda reading: completions(reading, reading.lines.offset(params.position))
        )

    @server.feature(lsp.TEXT_DOCUMENT_DEFINITION)
    async def _definition(params: lsp.DefinitionParams) -> list[lsp.Location]:
        found = await _everywhere(server, params, definitions)
        return found or await server.ask(
            params.text_document.uri, lambda reading: typical_setting(reading, reading.lines.offset(params.position))
        ) or []  # fmt: skip

    @server.feature(lsp.TEXT_DOCUMENT_REFERENCES)
    async def _references(params: lsp.ReferenceParams) -> list[lsp.Location]:
        declared = params.context.include_declaration
        return await _everywhere(server, params, lambda reading, place: references(reading, place, declared))

    @server.feature(lsp.TEXT_DOCUMENT_DOCUMENT_SYMBOL)
    async def _symbols(params: lsp.DocumentSymbolParams) -> list[lsp.DocumentSymbol] | None:
        return await server.ask(params.text_document.uri, lambda reading: symbols(reading.look, reading.lines))

    @server.feature(lsp.TEXT_DOCUMENT_FOLDING_RANGE)
    async def _folds(params: lsp.FoldingRangeParams) -> list[lsp.FoldingRange] | None:
        return await server.ask(params.text_document.uri, lambda reading: folds(reading.look, reading.lines))


async def _everywhere(
    server: Server,
    params: lsp.DefinitionParams | lsp.ReferenceParams,
    work: Callable[[Reading, Any], list[lsp.Location]],
) -> list[lsp.Location]:
    """What some work finds at a position in every plan to which the text belongs, each place once."""
    uri = params.text_document.uri

    def at(own: Reading) -> list[lsp.Location]:
        place = own.place(own.lines.offset(params.position))
        found: list[lsp.Location] = []
        for root in roots:
            if (file := root.file_of(uri)) is not None:
                found += [one for one in work(root, root.named(place, file)) if one not in found]
        return found

    roots = server.roots(uri)
    return await server.ask(uri, at) or []


def bind_changes(server: Server) -> None:
    """What is asked of a text and changes it: names, layout, cures."""

    @server.feature(lsp.TEXT_DOCUMENT_PREPARE_RENAME)
    async def _prepare(params: lsp.PrepareRenameParams) -> lsp.Range | None:
        uri = params.text_document.uri
        roots = server.roots(uri)

        def found(own: Reading) -> lsp.Range | None:
            place = own.place(own.lines.offset(params.position))
            stretches = [renamable(root, root.named(place, root.file_of(uri) or "")) for root in roots]
            return next((own.lines.range(*stretch) for stretch in stretches if stretch), None)

        return await server.ask(uri, found)

    @server.feature(lsp.TEXT_DOCUMENT_RENAME, lsp.RenameOptions(prepare_provider=True))
    async def _rename(params: lsp.RenameParams) -> lsp.WorkspaceEdit | None:
        uri = params.text_document.uri
        roots = server.roots(uri)

        def edits(own: Reading) -> lsp.WorkspaceEdit:
            place = own.place(own.lines.offset(params.position))
            found: dict[str, list[lsp.TextEdit]] = {}
            for root in roots:
                changes = renamed(root, root.named(place, root.file_of(uri) or ""), params.new_name)
                for file, here in changes.items():
                    kept = found.setdefault(root.address(file), [])
                    kept += [edit for edit in _edits(root.lines_of(file), here) if edit not in kept]
            return _workspace_edit(server, found)

        try:
            return await server.ask(uri, edits)
        except CannotRename as trouble:
            raise JsonRpcException(str(trouble), lsp.LSPErrorCodes.RequestFailed.value) from None

    @server.feature(lsp.TEXT_DOCUMENT_FORMATTING)
    async def _layout(params: lsp.DocumentFormattingParams) -> list[lsp.TextEdit] | None:
        return await server.ask(params.text_document.uri, _tidied)

    @server.feature(
        lsp.TEXT_DOCUMENT_CODE_ACTION, lsp.CodeActionOptions(code_action_kinds=[lsp.CodeActionKind.QuickFix])
    )
    async def _actions(params: lsp.CodeActionParams) -> list[lsp.CodeAction]:
        wanted, told = params.context.only, params.context.diagnostics
        if wanted is not None and lsp.CodeActionKind.QuickFix not in wanted:
            return []
        actions: list[lsp.CodeAction | None] = []
        here = params.text_document.uri
        for uri in (here, *server.reviews.users(here)):  # what is told in a used file is of the plans that use it
            reading = server.reviews.reading(uri)
            if reading is None:
                continue
            found = await asyncio.get_running_loop().run_in_executor(server.cures, fixes, reading, told)
            where = "" if uri == here else f" (in {reading.document.name.rpartition('/')[2]})"
            preferred = [at == 0 and not where and fix.preferable for at, fix in enumerate(found)]
            actions += [_action(server, reading, *pair, where) for pair in zip(found, preferred, strict=True)]
        return [action for action in actions if action is not None]


def _tidied(reading: Reading) -> list[lsp.TextEdit]:
    """The edit that lays a text out; none where it is so already, or is not whole."""
    from speclint.language.layout import tidied

    text = reading.document.text
    after = tidied(text)
    return _edits(reading.lines, [Edit(0, len(text), after)]) if after != text else []


def _action(server: Server, reading: Reading, fix: Fix, preferred: bool, where: str = "") -> lsp.CodeAction | None:
    """A quick fix as the editor takes it; why there is none, where the editor can show that."""
    about = server.client_capabilities.text_document
    told = list(fix.settles)
    if fix.refused:
        if not (about and about.code_action and about.code_action.disabled_support):
            return None
        why = lsp.CodeActionDisabled(fix.refused)
        return lsp.CodeAction(fix.title + where, lsp.CodeActionKind.QuickFix, diagnostics=told, disabled=why)
    edit = _workspace_edit(server, {reading.document.uri: _edits(reading.lines, list(fix.edits))})
    title = fix.title + where
    return lsp.CodeAction(title, lsp.CodeActionKind.QuickFix, diagnostics=told, is_preferred=preferred, edit=edit)


def _edits(lines: Lines, edits: list[Edit]) -> list[lsp.TextEdit]:
    return [lsp.TextEdit(lines.range(edit.start, edit.end), edit.text) for edit in sorted(edits)]


def _workspace_edit(server: Server, changes: dict[str, list[lsp.TextEdit]]) -> lsp.WorkspaceEdit:
    """Edits of several texts; bound to the versions they were made for where the editor can take that."""
    able = server.client_capabilities.workspace
    if not (able and able.workspace_edit and able.workspace_edit.document_changes):
        return lsp.WorkspaceEdit(changes=changes)
    bound = []
    for uri, edits in changes.items():
        document = server.documents.open.get(uri)
        text = lsp.OptionalVersionedTextDocumentIdentifier(uri, document.version if document else None)
        bound.append(lsp.TextDocumentEdit(text, edits))
    return lsp.WorkspaceEdit(document_changes=bound)
