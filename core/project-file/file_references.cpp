#include "core/project-file/file_references.h"

#include <fmt/format.h>
#include <openssl/evp.h>

#include <algorithm>
#include <array>
#include <cctype>
#include <fstream>
#include <memory>

#include "core/project/field_walk.h"
#include "core/project/fields.h"

namespace tackbench {

namespace {

namespace fs = std::filesystem;

bool same_digits(const std::string& a, const std::string& b) {
  return std::equal(a.begin(), a.end(), b.begin(), b.end(), [](unsigned char x, unsigned char y) {
    return std::tolower(x) == std::tolower(y);
  });
}

// Every file reference with its member path.
class ReferenceWalk final : public FieldWalk {
 public:
  void text(const TextField& field, std::string& value) override {
    if (field.kind == TextKind::relative_path) found.push_back({place(), {value, "", {}}});
    if (field.kind == TextKind::sha256 && !found.empty()) found.back().second.sha256 = value;
  }
  std::vector<std::pair<std::string, FileReference>> found;
};

}  // namespace

Result<std::string> sha256_of_file(const fs::path& path) {
  const Problem unreadable{path.string(), "", "the file cannot be read",
                           "put it there or take the reference out"};
  std::error_code error;
  if (!fs::is_regular_file(path, error)) return unreadable;
  std::ifstream stream(path, std::ios::binary);
  const std::unique_ptr<EVP_MD_CTX, decltype(&EVP_MD_CTX_free)> context(EVP_MD_CTX_new(),
                                                                        &EVP_MD_CTX_free);
  if (!stream || !context || EVP_DigestInit_ex(context.get(), EVP_sha256(), nullptr) != 1) {
    return unreadable;
  }
  std::array<char, 65536> block{};
  while (stream.read(block.data(), block.size()).gcount() > 0) {
    EVP_DigestUpdate(context.get(), block.data(), static_cast<std::size_t>(stream.gcount()));
  }
  std::array<unsigned char, EVP_MAX_MD_SIZE> digest{};
  unsigned int length = 0;
  if (stream.bad() || EVP_DigestFinal_ex(context.get(), digest.data(), &length) != 1) {
    return unreadable;
  }
  return fmt::format("{:02x}", fmt::join(digest.begin(), digest.begin() + length, ""));
}

namespace {

ReferenceState state_of(const FileReference& reference, const fs::path& folder) {
  const auto sum = sha256_of_file(folder / reference.path);
  if (!sum.ok()) return ReferenceState::missing;
  if (!same_digits(*sum, reference.sha256)) return ReferenceState::changed;
  return ReferenceState::present;
}

}  // namespace

std::vector<CheckedReference> checked_references(const Project& project,
                                                 const fs::path& project_file) {
  ReferenceWalk walk;
  Project copy = project;
  visit_fields(walk, copy);
  std::vector<CheckedReference> checked;
  for (const auto& [place, reference] : walk.found) {
    const ReferenceState state = state_of(reference, project_file.parent_path());
    checked.push_back({place, reference.path, state});
  }
  return checked;
}

}  // namespace tackbench
