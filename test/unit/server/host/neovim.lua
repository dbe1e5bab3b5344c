-- Drives Neovim as a plain client of the language server: no setting of ours, no option, only what it does by itself.
-- ZW_SERVER: the command as JSON; ZW_FILE: the instrument; ZW_RESULT: where the answers go, as JSON.
local server = vim.fn.json_decode(vim.env.ZW_SERVER)
local file = vim.env.ZW_FILE
local result = {}

vim.opt.hidden = true
vim.cmd('edit ' .. vim.fn.fnameescape(file))
vim.bo.filetype = 'sfz'
local buffer = vim.api.nvim_get_current_buf()
local client = vim.lsp.start_client({
  name = 'zonewright',
  cmd = server,
  root_dir = vim.fn.fnamemodify(file, ':h'),
})
vim.lsp.buf_attach_client(buffer, client)

local function wait(what, holds)
  if not vim.wait(20000, holds, 50) then error('waited in vain for ' .. what) end
end

wait('the server', function() return vim.lsp.client_is_stopped(client) == false and vim.lsp.get_client_by_id(client).initialized end)

local function codes()
  local found = {}
  for _, one in ipairs(vim.diagnostic.get(buffer)) do
    table.insert(found, { code = one.code or (one.user_data and one.user_data.lsp and one.user_data.lsp.code), line = one.lnum, message = one.message })
  end
  return found
end

local function ask(method, params)
  local answers = vim.lsp.buf_request_sync(buffer, method, params, 20000)
  local answer = answers and answers[client]
  if not answer then error(method .. ' was not answered') end
  if answer.err then error(method .. ': ' .. answer.err.message) end
  return answer.result
end

local function at(line, character)
  return {
    textDocument = { uri = vim.uri_from_bufnr(buffer) },
    position = { line = line, character = character },
  }
end

local function text()
  return table.concat(vim.api.nvim_buf_get_lines(buffer, 0, -1, false), '\n')
end

local function main()
  wait('findings', function() return #vim.diagnostic.get(buffer) > 0 end)
  result.findings = codes()

  local completion = ask('textDocument/completion', at(3, 11))
  result.completion = {}
  for _, item in ipairs(completion.items or completion) do table.insert(result.completion, item.label) end

  result.hover = ask('textDocument/hover', at(1, 3 + 10)).contents

  local rename = at(2, 27)
  rename.newName = '$ROOT'
  vim.lsp.util.apply_workspace_edit(ask('textDocument/rename', rename), 'utf-16')
  result.renamed = text()

  local format = at(0, 0)
  format.options = { tabSize = 2, insertSpaces = true }
  vim.lsp.util.apply_text_edits(ask('textDocument/formatting', format), buffer, 'utf-16')
  result.formatted = text()

  -- The findings of the text as it is laid out now: the one of the misspelt name covers the name.
  local misspelt
  wait('the finding of the misspelt name', function()
    for _, one in ipairs(vim.diagnostic.get(buffer)) do
      local line = vim.api.nvim_buf_get_lines(buffer, one.lnum, one.lnum + 1, false)[1] or ''
      if line:sub(one.col + 1, one.end_col) == 'lokye' then misspelt = one end
    end
    return misspelt ~= nil
  end)
  local range = {
    start = { line = misspelt.lnum, character = misspelt.col },
    ['end'] = { line = misspelt.end_lnum, character = misspelt.end_col },
  }
  local action = { textDocument = { uri = vim.uri_from_bufnr(buffer) }, range = range, context = {
    diagnostics = { { range = range, message = misspelt.message, code = 'opcode-unknown', source = misspelt.source, severity = misspelt.severity } },
  } }
  result.actions = {}
  for _, one in ipairs(ask('textDocument/codeAction', action)) do
    table.insert(result.actions, one.title)
    if one.edit and not result.fixed then
      vim.lsp.util.apply_workspace_edit(one.edit, 'utf-16')
      result.fixed = text()
    end
  end
  wait('the fix to be seen', function()
    for _, one in ipairs(codes()) do if one.code == 'opcode-unknown' then return false end end
    return true
  end)
  result.left = codes()
end

local ok, problem = pcall(main)
if not ok then result.problem = tostring(problem) end
vim.fn.writefile({ vim.fn.json_encode(result) }, vim.env.ZW_RESULT)
vim.lsp.stop_client(client)
vim.cmd('qall!')
