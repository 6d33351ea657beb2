#include <gmock/gmock.h>

#include "core/project-file/file_references.h"
#include "tests/project-file/temporary_folder.h"

namespace tackbench {
namespace {

namespace fs = std::filesystem;
using testing::TemporaryFolder;
using testing::write_content;

constexpr const char* kAbcSum = "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad";

// NIST example values for SHA-256 (FIPS 180-4 examples: "abc", the empty text and the 448-bit
// text), from memory; the same figures come from coreutils' sha256sum.
TEST(Sha256OfFile, AgreesWithPublishedValues) {
  const TemporaryFolder folder;
  const fs::path file = folder.path() / "content";
  const auto sum = [&](const std::string& content) {
    write_content(file, content);
    return *sha256_of_file(file);
  };
  EXPECT_EQ(sum("abc"), kAbcSum);
  EXPECT_EQ(sum(""), "e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855");
  EXPECT_EQ(sum("abcdbcdecdefdefgefghfghighijhijkijkljklmklmnlmnomnopnopq"),
            "248d6a61d20638b8e5c026930c3e6039a33ce45964ff2167f6ecedd419db06c1");
  EXPECT_EQ(sum(std::string(1000000, 'a')),
            "cdc76e5c9914fb9281a1c7e284d73e67f1809a48a497200e046d39ccc7112cd0");
}

TEST(CheckedReferences, TellPresentChangedAndMissing) {
  const TemporaryFolder folder;
  fs::create_directory(folder.path() / "scans");
  write_content(folder.path() / "scans" / "good.ply", "abc");
  write_content(folder.path() / "scans" / "touched.ply", "abd");
  Project project;
  auto shapes = std::make_shared<ShapesStation>();
  shapes->shapes.resize(3);
  shapes->shapes[0].mesh = FileReference{"scans/good.ply", kAbcSum};
  shapes->shapes[1].mesh = FileReference{"scans/touched.ply", kAbcSum};
  project.shapes = shapes;
  auto sheet = std::make_shared<SheetSettings>();
  sheet->backdrops.resize(1);
  sheet->backdrops[0].file = {"photo.jpg", kAbcSum};
  project.sheet = sheet;

  const auto checked = checked_references(project, folder.path() / "yard.tack");
  ASSERT_EQ(checked.size(), 3U);
  EXPECT_EQ(checked[0].place, "shapes.shapes[0].mesh");
  EXPECT_EQ(checked[0].state, ReferenceState::present);
  EXPECT_EQ(checked[1].state, ReferenceState::changed);
  EXPECT_EQ(checked[2].place, "sheet.backdrops[0].file");
  EXPECT_EQ(checked[2].state, ReferenceState::missing);
}

TEST(CheckedReferences, UpperCaseDigitsAreTheSame) {
  const TemporaryFolder folder;
  write_content(folder.path() / "a.ply", "abc");
  std::string upper = kAbcSum;
  for (char& c : upper) c = static_cast<char>(std::toupper(static_cast<unsigned char>(c)));
  Project project;
  auto shapes = std::make_shared<ShapesStation>();
  shapes->shapes.resize(1);
  shapes->shapes[0].mesh = FileReference{"a.ply", upper};
  project.shapes = shapes;
  EXPECT_EQ(checked_references(project, folder.path() / "yard.tack")[0].state,
            ReferenceState::present);
}

}  // namespace
}  // namespace tackbench
