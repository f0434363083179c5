// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "batch/writing.h"

#include "batch/words.h"

namespace morrow::batch {

Status refuseToWrite(FileError error, const std::string &path)
{
    complain(sentence(error, path));
    const bool isThePath = error == FileError::Exists || error == FileError::Missing || error == FileError::NotRegular;
    return isThePath ? Status::WrongUsage : Status::MachineFailed;
}

} // namespace morrow::batch
